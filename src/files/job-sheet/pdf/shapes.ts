import type { At, Look, Page } from '../../pdf/page.ts';
import type { Area } from './look.ts';

/** Draws a line through places of the page. */
export function drawLine(page: Page, look: Look, ...places: readonly At[]): void {
  page.draw(look, (path) => {
    places.forEach((at, i) => {
      if (i === 0) path.move(at);
      else path.line(at);
    });
  });
}

/** Draws a closed outline through places of the page. */
export function drawPolygon(page: Page, look: Look, ...places: readonly At[]): void {
  page.draw(look, (path) => {
    places.forEach((at, i) => {
      if (i === 0) path.move(at);
      else path.line(at);
    });
    path.close();
  });
}

export function drawRect(page: Page, { x, y, width, height }: Area, look: Look): void {
  page.draw(look, (path) => path.rect(x, y, width, height));
}

export function drawCircle(page: Page, at: At, radius: number, look: Look): void {
  page.draw(look, (path) => {
    path.arc(at, radius, 0, 2 * Math.PI);
    path.close();
  });
}
