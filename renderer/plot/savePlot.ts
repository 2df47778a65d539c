import encodeSans from '../ui/encode-sans-latin-wdth-normal.woff2?url';

/**
 * What decides how a drawn thing looks, as attributes of SVG: the page's policy forbids style attributes, and a file
 * that uses none is read by more programs.
 */
const keptOfShapes = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linejoin',
  'paint-order',
] as const;
const keptOfText = ['font-family', 'font-size', 'font-weight', 'font-stretch', 'text-anchor'] as const;

/** Room around the figure, so that labels on its edge are whole. */
const marginPx = 12;

/** The figure as an SVG file that stands alone: colours resolved, the font inside, grips left out. */
export async function svgText(svg: SVGSVGElement): Promise<string> {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  resolveStyles(svg, copy);
  for (const grip of copy.querySelectorAll('.grip')) grip.remove();
  for (const each of [copy, ...copy.querySelectorAll('[class]')]) each.removeAttribute('class');
  const width = svg.clientWidth || Number(svg.getAttribute('width'));
  const height = svg.clientHeight || Number(svg.getAttribute('height'));
  const whole = [-marginPx, -marginPx, width + 2 * marginPx, height + 2 * marginPx];
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('viewBox', whole.join(' '));
  copy.setAttribute('width', String(whole[2]));
  copy.setAttribute('height', String(whole[3]));
  copy.removeAttribute('style');
  copy.prepend(paperOf(whole), await fontOf());
  return new XMLSerializer().serializeToString(copy);
}

/** The figure as a picture, twice as fine as the screen. */
export async function pngBlob(svg: SVGSVGElement, scale = 2): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([await svgText(svg)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => {
        if (blob === null) reject(new Error('The picture could not be made. Save it as SVG instead.'));
        else resolve(blob);
      }, 'image/png');
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Hand a file to the person the way a download does. */
export function saveFile(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The download has its own hold on the content by the next turn.
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 1000);
}

function resolveStyles(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  const kept = from instanceof SVGTextElement ? [...keptOfShapes, ...keptOfText] : keptOfShapes;
  // What only holds others (a group, a clip) hands nothing down: each drawn thing has its own.
  if (from instanceof SVGGeometryElement || from instanceof SVGTextElement)
    for (const name of kept) to.setAttribute(name, style.getPropertyValue(name));
  Array.from(from.children).forEach((child, index) => {
    const twin = to.children[index];
    if (twin !== undefined) resolveStyles(child, twin);
  });
}

function paperOf([x, y, width, height]: readonly number[]): SVGRectElement {
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  const ground = getComputedStyle(document.documentElement).getPropertyValue('--paper').trim();
  for (const [name, value] of Object.entries({ x, y, width, height, fill: ground }))
    paper.setAttribute(name, String(value));
  return paper;
}

async function fontOf(): Promise<SVGStyleElement> {
  const style = document.createElementNS('http://www.w3.org/2000/svg', 'style');
  const bytes = new Uint8Array(await (await fetch(encodeSans)).arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  style.textContent = `@font-face{font-family:'Encode Sans';font-weight:100 900;font-stretch:75% 125%;src:url(data:font/woff2;base64,${btoa(text)}) format('woff2')}text{font-variant-numeric:tabular-nums lining-nums}`;
  return style;
}
