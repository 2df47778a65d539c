import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { seeded } from './measure.ts';

/**
 * Write an archive CSV with the few columns that the program reads, some 60 bytes a row, of a station whose place is known.
 * @param stepMinutes between two reports, from 1950 on
 */
export async function writeShortCsv(path: string, rows: number, stepMinutes: number): Promise<void> {
  const random = seeded(11);
  const out = createWriteStream(path);
  let block = 'station,valid,tmpf,dwpf,drct,sknt,alti,gust\n';
  for (let row = 0; row < rows; row += 1) {
    const time = new Date(Date.UTC(1950, 0, 1, 0, 51) + row * stepMinutes * 60_000);
    const day = (row * stepMinutes) / 1440;
    // A day's and a year's course with some scatter, so that nothing stands alone as a spoilt value would.
    const temperature = 50 + 10 * Math.sin(2 * Math.PI * day) + 20 * Math.sin((2 * Math.PI * day) / 365.25);
    const dewPoint = temperature - 3 - 17 * random();
    const setting = 29.9 + 0.3 * Math.sin(day / 1.7) + 0.02 * random();
    block += `ORD,${time.toISOString().slice(0, 10)} ${time.toISOString().slice(11, 16)},${(temperature + random()).toFixed(2)},${dewPoint.toFixed(2)},${String(10 * Math.round(36 * random()))}.00,${String(Math.round(20 * random()))}.00,${setting.toFixed(2)},M\n`;
    if (block.length > 1 << 20) {
      if (!out.write(block)) await once(out, 'drain');
      block = '';
    }
  }
  out.end(block);
  await once(out, 'finish');
}
