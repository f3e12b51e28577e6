import { speak } from '../../words/index.ts';

/** What is refused is told in the language that the worker is named after. */
const ready = speak(self.name).then(() =>
  Promise.all([import('dxf-parser'), import('./dxf.ts'), import('./picture.ts'), import('./svg.ts')]),
);

/** Turns the texts of drawings into pictures, away from the page so that it stays alive. */
self.onmessage = async ({ data }: MessageEvent<{ kind: 'svg' | 'dxf'; text: string }>) => {
  const [{ default: DxfParser }, { drawDxf }, { Refused }, { cleanSvg }] = await ready;
  try {
    const value =
      data.kind === 'svg'
        ? cleanSvg(data.text)
        : drawDxf(data.text, (text) => new DxfParser().parseSync(text));
    self.postMessage({ ok: true, value });
  } catch (error) {
    self.postMessage({
      ok: false,
      refused: error instanceof Refused,
      message: String((error as Error).message),
    });
  }
};
