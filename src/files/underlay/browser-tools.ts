import { language } from '../../words/index.ts';
import { browserRaster } from './browser-raster.ts';
import type { DrawnDxf } from './dxf.ts';
import { Refused } from './picture.ts';
import type { SourceTools } from './source.ts';
import type { CleanSvg } from './svg.ts';

type Answer =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly refused: boolean; readonly message: string };

/** Reading pictures in a browser: PDF pages and drawings by workers that are loaded when there is a file for them. */
export const browserTools: SourceTools = {
  raster: browserRaster,
  async pdf() {
    const [pdfjs, worker, jpeg2000] = await Promise.all([
      import('pdfjs-dist'),
      import('pdfjs-dist/build/pdf.worker.min.mjs?url'),
      import('pdfjs-dist/wasm/openjpeg_nowasm_fallback.js?url'),
    ]);
    pdfjs.GlobalWorkerOptions.workerSrc = worker.default;
    // The worker adds a file's name to the place that it is told: behind `#` it changes no address.
    return { pdfjs, parts: `${new URL(jpeg2000.default, document.baseURI).href}#/` };
  },
  drawer: {
    svg: (text, signal) => drawn('svg', text, signal) as Promise<CleanSvg>,
    dxf: (text, signal) => drawn('dxf', text, signal) as Promise<DrawnDxf>,
  },
};

function drawn(kind: 'svg' | 'dxf', text: string, signal?: AbortSignal): Promise<unknown> {
  const worker = new Worker(new URL('./draw.worker.ts', import.meta.url), {
    type: 'module',
    name: language,
  });
  return new Promise((resolve, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason));
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.ok) resolve(data.value);
      else reject(data.refused ? new Refused(data.message) : new Error(data.message));
    };
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage({ kind, text });
  }).finally(() => worker.terminate());
}
