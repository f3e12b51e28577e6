import type { UiState } from '../ui.ts';

/** True where what lies over the desk is what is printed: the sheet itself, schemes side by side, the lab, the help. */
export function printsItself({ printing, comparing, lab, help }: UiState): boolean {
  return printing !== null || comparing || lab !== null || help !== null;
}

let deskNext = false;

/** Prints the desk as it is on the screen. */
export function printDesk(): void {
  deskNext = true;
  window.print();
}

/** Whether the print that begins is of the desk; asked once for each. */
export function takeDeskNext(): boolean {
  const asked = deskNext;
  deskNext = false;
  return asked;
}
