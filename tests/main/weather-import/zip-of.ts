import { crc32, deflateRawSync } from 'node:zlib';

export interface Member {
  name: string;
  content: Buffer;
  stored?: boolean;
}

/** An archive as PKWARE APPNOTE.TXT, 4.3.7, 4.3.12 and 4.3.16 lay it out. */
export function zipOf(members: readonly Member[]): Buffer {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, content, stored = false } of members) {
    const packed = stored ? content : deflateRawSync(content);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(stored ? 0 : 8, 4);
    common.writeUInt32LE(crc32(content), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(content.length, 18);
    common.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\u0003\u0004'), common, Buffer.from(name), packed]);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(offset, 10);
    directory.push(
      Buffer.concat([Buffer.from('PK\u0001\u0002'), Buffer.from([20, 0]), common, place, Buffer.from(name)]),
    );
    parts.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(members.length, 4);
  end.writeUInt16LE(members.length, 6);
  end.writeUInt32LE(list.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...parts, list, Buffer.from('PK\u0005\u0006'), end]);
}
