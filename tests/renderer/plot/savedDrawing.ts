/** A drawing as it is stored: one element a line, without what the compiler and the page's run add. */
export function savedDrawing(svg: SVGSVGElement | null): string {
  if (svg === null) throw new Error('nothing was drawn');
  const copy = svg.cloneNode(true) as SVGSVGElement;
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  return `${copy.outerHTML
    .replace(/<!--.*?-->/g, '')
    .replace(/ class="([^"]*)"/g, (_, names: string) => {
      const kept = names.split(' ').filter((name) => name !== '' && !name.startsWith('svelte-'));
      return kept.length === 0 ? '' : ` class="${kept.join(' ')}"`;
    })
    // Ids count up with every component of a run.
    .replace(/[a-z0-9]*-clip/g, 'clip')
    .replace(/\s+/g, ' ')
    .replace(/> ?</g, '>\n<')}\n`;
}
