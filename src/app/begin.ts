import { speakAsWished } from './language.ts';

// Modules read their texts as they load, so the language comes before all of them.
await speakAsWished();
await import('./main.tsx');
