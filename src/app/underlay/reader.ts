import { browserTools } from '../../files/underlay/browser-tools.ts';
import { openSource } from '../../files/underlay/source.ts';
import type { Reader } from './desk.ts';

export const reader: Reader = { open: openSource, tools: browserTools };
