import { describe, expect, it } from 'vitest';
import {
  addLevels,
  decibelAFromSones,
  sonesFromDecibelA,
  sonesFromPhon,
} from '../../../src/hydraulics/decibel.ts';
import {
  fanHeardAt,
  fanPower,
  fanShift,
  fittingPower,
  heardEnergy,
  straightDuctPower,
} from '../../../src/hydraulics/sound.ts';

describe('levels', () => {
  it('two equal levels add up to 3 dB more', () => {
    expect(addLevels([60, 60])).toBeCloseTo(60 + 10 * Math.log10(2), 12);
  });

  it('sones and dBA by the rating rule are inverse to each other', () => {
    expect(decibelAFromSones(sonesFromDecibelA(47.3))).toBeCloseTo(47.3, 10);
  });

  it('ten phon more is twice as loud', () => {
    expect(sonesFromPhon(70) / sonesFromPhon(60)).toBeCloseTo(2, 12);
  });
});

describe('flow noise', () => {
  it('doubling the velocity in straight duct adds 15 dB', () => {
    expect(straightDuctPower(10, 0.02) - straightDuctPower(5, 0.02)).toBeCloseTo(50 * Math.log10(2), 10);
  });

  it('a fitting that costs more is louder at the same velocity', () => {
    expect(fittingPower(8, 1.2, 0.02)).toBeGreaterThan(fittingPower(8, 0.15, 0.02));
  });

  it('the same flow through a smaller duct is louder in spite of its smaller area', () => {
    const area = (d: number) => (Math.PI * d * d) / 4;
    const power = (d: number) => straightDuctPower(0.15 / area(d), area(d));
    expect(power(0.1524)).toBeGreaterThan(power(0.2032));
  });
});

describe('the fan', () => {
  it('a rated level is what is heard when it works at its rated point', () => {
    expect(10 * Math.log10(heardEnergy(fanHeardAt(52), 'cook', null))).toBeCloseTo(52, 10);
    expect(fanShift({ flow: 0.2, pressure: 60 }, { flow: 0.2, pressure: 60 })).toBe(0);
  });

  it('less air against more pressure is louder when the pressure outweighs the flow', () => {
    expect(fanShift({ flow: 0.25, pressure: 60 }, { flow: 0.15, pressure: 180 })).toBeGreaterThan(5);
  });

  it('doubling the pressure at the same flow adds 6 dB at every octave', () => {
    const [a, b] = [fanPower(0.2, 100), fanPower(0.2, 200)];
    expect(b.overall - a.overall).toBeCloseTo(20 * Math.log10(2), 10);
    expect(b.shape).toEqual(a.shape);
  });
});

describe('the way to the ear', () => {
  it('a source at the far end of the run is quieter at the cook than the same source at the hood', () => {
    const source = fanPower(0.2, 100);
    const near = { length: 0, bends: 0, opening: 0.2 };
    const far = { length: 8, bends: 3, opening: 0.2 };
    expect(heardEnergy(source, 'cook', far)).toBeLessThan(heardEnergy(source, 'cook', near));
  });
});
