import { describe, expect, it } from 'vitest';
import { kindsFrom } from '../../../src/app/tool-kinds.ts';
import { firstKinds } from '../../../src/canvas/board.ts';
import { toolKinds } from '../../../src/canvas/tools/tool-kinds.ts';

describe('the kinds that were kept', () => {
  it('are taken where the tools make them', () => {
    expect(kindsFrom({ block: 'beam', exit: 'roof', part: 'screen' })).toEqual({
      block: 'beam',
      exit: 'roof',
      part: 'screen',
    });
  });

  it('are the first ones where they are missing, unknown or no kinds at all', () => {
    expect(kindsFrom({ block: 'door to nowhere', other: 'x' })).toEqual(firstKinds);
    expect(kindsFrom(null)).toEqual(firstKinds);
    expect(kindsFrom('beam')).toEqual(firstKinds);
  });

  it('begin with the first of each tool, and none has more than the figures can name', () => {
    for (const tool of ['block', 'exit', 'part'] as const) {
      expect(toolKinds[tool][0]?.id).toBe(firstKinds[tool]);
      expect(toolKinds[tool].length).toBeLessThanOrEqual(9);
    }
  });
});
