/** Bodies that stand on a run: hoods, caps and parts in line, as they are spoken of within a sentence. */
export const hood = (node: string) => `the body of ${node}`;
export const cap = (node: string) => `the body of ${node}`;
export const inline = (part: string, leg: string) => `the ${part} in ${leg}`;
export const asDrawn = (message: string) => `${message} Its size is as drawn: see its data sheet.`;
