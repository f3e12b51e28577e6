import { describe, expect, it } from 'vitest';
import { parseSection, sectionText, sizesOf } from '../../../src/app/section-text.ts';

const INCH = 0.0254;

function section(text: string, system: 'imperial' | 'metric') {
  const read = parseSection(text, system);
  if (!read.ok) throw new Error(read.message);
  return read.value;
}

describe('a duct size', () => {
  it('of the catalogue reads back as the same section', () => {
    for (const system of ['imperial', 'metric'] as const)
      for (const size of sizesOf(system)) expect(section(size.name, system)).toEqual(size.section);
  });

  it('of the catalogue is shown by its name', () => {
    for (const size of sizesOf('imperial')) expect(sectionText(size.section, 'imperial')).toBe(size.name);
  });

  it('is round where one number is given', () => {
    expect(section('7', 'imperial')).toEqual({ shape: 'round', diameter: 0.1778 });
    expect(section('ø 160 mm', 'imperial')).toEqual({ shape: 'round', diameter: 0.16 });
  });

  it('is rectangular where two are given, whichever comes first', () => {
    const stack = { shape: 'rectangular', width: 10 * INCH, height: 3.25 * INCH };
    expect(section('3 1/4 x 10', 'imperial')).toEqual(stack);
    expect(section('10 × 3 1/4 in', 'imperial')).toEqual(stack);
  });

  it('is oval where it says so', () => {
    expect(section('4 x 7 oval', 'imperial')).toMatchObject({ shape: 'oval', height: 4 * INCH });
  });

  it('takes the unit of one side for both', () => {
    expect(section('200 x 100 mm', 'imperial')).toEqual({ shape: 'rectangular', width: 0.2, height: 0.1 });
    expect(section('200 mm x 100', 'imperial')).toEqual({ shape: 'rectangular', width: 0.2, height: 0.1 });
    expect(section('3¼ × 10″', 'metric')).toEqual({
      shape: 'rectangular',
      width: 10 * INCH,
      height: 3.25 * INCH,
    });
  });

  it('is refused with a sentence where it makes no sense', () => {
    for (const text of ['', 'wide', '8 x', '8 x 8 x 8', '0', '90 in']) {
      const read = parseSection(text, 'imperial');
      expect(read.ok, text).toBe(false);
      if (!read.ok) expect(read.message, text).toMatch(/\w.*[.:]/);
    }
  });
});
