import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { offline } from './scripts/offline.mjs';

const otherLanguage =
  /\/react-(?:aria|stately)[^/]*\/dist\/.*\/intl\/(?:.*\/)?(?!en-US)[a-z]{2}-[A-Z]{2}\.m?js$/;

/**
 * The program speaks English: where the interface library has its few words in another language, the
 * English ones stand instead, once, and thirty languages stay out of the build.
 */
const inEnglish: Plugin = {
  name: 'in-english',
  apply: 'build',
  enforce: 'pre',
  load(id) {
    if (!otherLanguage.test(id)) return null;
    return `export { default } from './en-US${id.slice(id.lastIndexOf('.'))}';`;
  },
};

export default defineConfig({
  base: './',
  plugins: [react(), inEnglish, offline()],
  worker: { format: 'es' },
  build: { outDir: 'dist/app', chunkSizeWarningLimit: 900 },
});
