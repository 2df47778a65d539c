import { crc32, deflateSync, inflateSync } from 'node:zlib';

/** Filters and chunks as in ISO/IEC 15948 (PNG), clauses 5 and 9. */
const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/**
 * A browser's picture of a page (PNG, 8 bits a channel, no interlace) again, with its 256 most frequent colours: every
 * other becomes the nearest of them. A page of ink on paper loses nothing that is seen, and a third of its size.
 * @throws Error for another kind of PNG
 */
export function asPalettePng(png: Buffer): Buffer {
  const { width, height, channels, pixels } = decoded(png);
  const counts = new Map<number, number>();
  const colours = new Uint32Array(width * height);
  for (let i = 0; i < colours.length; i += 1) {
    const at = i * channels;
    const colour = ((pixels[at] ?? 0) << 16) | ((pixels[at + 1] ?? 0) << 8) | (pixels[at + 2] ?? 0);
    colours[i] = colour;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const byCount = [...counts].sort((a, b) => b[1] - a[1]).map(([colour]) => colour);
  const palette = byCount.slice(0, 256);
  const indexOf = new Map(byCount.map((colour) => [colour, nearest(palette, colour)]));
  // Filter 0 before each line: neighbouring indices say nothing about each other.
  const lines = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      lines[y * (width + 1) + 1 + x] = indexOf.get(colours[y * width + x] ?? 0) ?? 0;
  const head = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 8, 3, 0, 0, 0]);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  const table = Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 0xff, colour & 0xff]));
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('PLTE', table),
    chunk('IDAT', deflateSync(lines, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function nearest(palette: readonly number[], colour: number): number {
  let [best, least] = [0, Infinity];
  for (const [index, each] of palette.entries()) {
    const red = (each >> 16) - (colour >> 16);
    const green = ((each >> 8) & 0xff) - ((colour >> 8) & 0xff);
    const blue = (each & 0xff) - (colour & 0xff);
    const distance = red * red + green * green + blue * blue;
    if (distance < least) [best, least] = [index, distance];
  }
  return best;
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

function decoded(png: Buffer): { width: number; height: number; channels: number; pixels: Buffer } {
  const width = png.readUInt32BE(16);
  const height = png.readUInt32BE(20);
  const [depth, kind, , , interlace] = png.subarray(24, 29);
  if (depth !== 8 || (kind !== 2 && kind !== 6) || interlace !== 0)
    throw new Error('Only a PNG of 8 bits a channel in true colour, not interlaced, can be given a palette.');
  const channels = kind === 6 ? 4 : 3;
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; at += png.readUInt32BE(at) + 12)
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT')
      parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const raw = inflateSync(Buffer.concat(parts));
  const stride = width * channels;
  const pixels = Buffer.alloc(height * stride);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let x = 0; x < stride; x += 1) {
      const to = y * stride + x;
      const left = x < channels ? 0 : (pixels[to - channels] ?? 0);
      const up = y === 0 ? 0 : (pixels[to - stride] ?? 0);
      const upLeft = x < channels || y === 0 ? 0 : (pixels[to - stride - channels] ?? 0);
      pixels[to] = (raw[y * (stride + 1) + 1 + x] ?? 0) + predicted(filter, left, up, upLeft);
    }
  }
  return { width, height, channels, pixels };
}

function predicted(filter: number, left: number, up: number, upLeft: number): number {
  if (filter === 1) return left;
  if (filter === 2) return up;
  if (filter === 3) return (left + up) >> 1;
  if (filter !== 4) return 0;
  const toLeft = Math.abs(up - upLeft);
  const toUp = Math.abs(left - upLeft);
  const toUpLeft = Math.abs(left + up - 2 * upLeft);
  if (toLeft <= toUp && toLeft <= toUpLeft) return left;
  return toUp <= toUpLeft ? up : upLeft;
}
