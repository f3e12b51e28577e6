import { describe, expect, it } from 'vitest';
import { cleanSvg } from '../../../../src/files/underlay/svg.ts';

const wrap = (body: string, attributes = 'viewBox="0 0 100 50"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${body}</svg>`;
const line = '<line x1="0" y1="0" x2="9" y2="9" stroke="black"/>';
const clean = (body: string) => cleanSvg(wrap(line + body));

describe('a drawing in SVG', () => {
  it('keeps its lines, styles and references within the file', () => {
    const { text, removed } = clean(
      '<style>.a{fill:url(#g)}</style><g id="p" class="a" style="stroke: red"><path d="M0 0h5"/></g><use xlink:href="#p"/>',
    );
    for (const kept of ['<line ', 'fill:url(#g)', 'stroke: red', 'd="M0 0h5"', 'xlink:href="#p"'])
      expect(text).toContain(kept);
    expect(removed).toBe(0);
  });

  it.each([
    ['a script', '<script>alert(1)</script>', 'alert'],
    ['a handler', '<rect width="1" height="1" onload="alert(1)"/>', 'onload'],
    ['a handler in capitals', '<rect width="1" height="1" ONCLICK="alert(1)"/>', 'alert'],
    ['a page inside the picture', '<foreignObject><iframe src="x"/></foreignObject>', 'iframe'],
    ['a picture from elsewhere', '<image href="https://example.com/a.png" width="5" height="5"/>', 'example'],
    ['a script as an address', '<use xlink:href="javascript:alert(1)"/>', 'javascript'],
    ['a script as an address in references', '<use href="&#106;avascript:alert(1)"/>', 'avascript'],
    ['a drawing inside an address', '<image href="data:image/svg+xml;base64,AAAA"/>', 'svg+xml'],
    ['a style from elsewhere', '<style>@import "https://example.com/a.css"; .a{fill:red}</style>', 'example'],
    ['a font from elsewhere', '<style>@font-face{src:url(https://example.com/f)}</style>', 'example'],
    ['a fill from elsewhere', '<rect fill="url(https://example.com/#g)" width="1" height="1"/>', 'example'],
    ['a quoted fill from elsewhere', `<rect style="fill:url( 'https://example.com/#g')"/>`, 'example'],
    ['an address behind escapes', '<rect style="fill:\\75rl(https://example.com)"/>', 'example'],
    [
      'a change over time',
      '<rect><animate attributeName="href" to="https://example.com"/></rect>',
      'example',
    ],
  ])('loses %s, and says so', (_, body, word) => {
    const { text, removed } = clean(body);
    expect(text).not.toContain(word);
    expect(text).toContain('<line ');
    expect(removed).toBeGreaterThan(0);
  });

  it('keeps what stands inside a link, without the link', () => {
    const { text } = clean('<a href="https://example.com"><circle r="3"/></a>');
    expect(text).toContain('<circle r="3"/>');
    expect(text).not.toContain('example');
  });

  it('reads names that the file declares for words, and none that leads to another', () => {
    const { text } = cleanSvg(
      `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY w "wide"><!ENTITY x "&w;&w;">]>${wrap(`<text>&w;|&x;|&lt;</text>`)}`,
    );
    expect(text).toContain('<text>wide||&lt;</text>');
  });

  it('gets many pixels in its own proportions', () => {
    expect(cleanSvg(wrap(line)).size).toEqual([4000, 2000]);
  });

  it('in millimetres knows its paper', () => {
    const { paper, size } = cleanSvg(wrap(line, 'width="200mm" height="100mm" viewBox="0 0 800 400"'));
    expect((paper ?? 0) * size[0]).toBeCloseTo(0.2, 9);
  });

  it.each([
    ['an element that is not closed', '<svg viewBox="0 0 1 1"><g>', /not well-formed at line 1/],
    ['elements closed out of turn', '<svg viewBox="0 0 1 1"><g><line></g></line></svg>', /well-formed/],
    ['a bare attribute', '<svg viewBox="0 0 1 1"><line\nx></line></svg>', /well-formed/],
    ['another kind of text', '<html><p>hello</p></html>', /first element is not svg/],
    ['no size', '<svg><line x2="1"/></svg>', /how large/],
    ['nothing to draw', '<svg viewBox="0 0 1 1"><script>1</script></svg>', /nothing that can be drawn/],
  ])('is refused with %s', (_, text, why) => {
    expect(() => cleanSvg(text)).toThrow(why);
  });
});
