import { createWriteStream } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { seeded } from './measure.ts';

/** The 30 columns of a whole export of the airport archive. */
const header =
  'station,valid,tmpf,dwpf,relh,drct,sknt,p01i,alti,mslp,vsby,gust,skyc1,skyc2,skyc3,skyc4,skyl1,skyl2,skyl3,skyl4,wxcodes,ice_accretion_1hr,ice_accretion_3hr,ice_accretion_6hr,peak_wind_gust,peak_wind_drct,peak_wind_time,feel,metar,snowdepth';

/**
 * An invented archive CSV, some 225 bytes a row as real ones have, one report an hour without end.
 * @returns its folder and path; the caller removes the folder
 */
export async function writeArchiveCsv(rows: number): Promise<{ folder: string; path: string }> {
  const folder = await mkdtemp(join(tmpdir(), 'tarewing-bench-'));
  const path = join(folder, 'archive.csv');
  const random = seeded(7);
  const out = createWriteStream(path);
  const two = (value: number) => String(value).padStart(2, '0');
  out.write(`${header}\n`);
  let block = '';
  for (let row = 0; row < rows; row += 1) {
    const at = new Date(Date.UTC(1905, 0, 1, 0, 51) + row * 3_600_000);
    const date = `${String(at.getUTCFullYear())}-${two(at.getUTCMonth() + 1)}-${two(at.getUTCDate())}`;
    const time = `${two(at.getUTCHours())}:51`;
    // A day's and a year's course, so that values do not stand alone as a spoilt record's would.
    const course = Math.sin((row / 24) * 2 * Math.PI) + 2 * Math.sin((row / 8766) * 2 * Math.PI);
    const temperature = Math.round(50 + 10 * course + 4 * random());
    const dewPoint = temperature - Math.round(20 * random());
    const setting = (29.9 + 0.3 * Math.sin(row / 40) + 0.05 * random()).toFixed(2);
    const wind = Math.round(30 * random());
    const direction = Math.round(36 * random()) * 10;
    const report = `KBEN ${two(at.getUTCDate())}${time.replace(':', '')}Z ${String(direction).padStart(3, '0')}${two(wind)}KT 10SM OVC012 ${two(temperature % 40)}/${two(dewPoint % 30)} A${setting.replace('.', '')} RMK AO2 SLP043 T01940144 PK WND 18046`;
    block += `BEN,${date} ${time},${temperature.toFixed(2)},${dewPoint.toFixed(2)},82.15,${direction.toFixed(2)},${wind.toFixed(2)},0.00,${setting},M,10.00,M,OVC,M,M,M,1200.00,M,M,M,M,M,M,M,M,M,M,66.90,${report},M\n`;
    if (block.length > 1 << 20) {
      if (!out.write(block)) await once(out, 'drain');
      block = '';
    }
  }
  out.end(block);
  await once(out, 'finish');
  return { folder, path };
}
