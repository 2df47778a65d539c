import { existsSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';

/** A service that keeps copies of a folder elsewhere. */
export interface SyncingService {
  service: string;
  /** The folder that it keeps. */
  folder: string;
}

interface Mark {
  service: string;
  /** A folder of this name is kept by the service. */
  named?: RegExp;
  /** The service leaves a file or folder of this name at the top of what it keeps. */
  holds?: string[];
}

// Names and marks from memory of these services' usual installations: common practice, no source. A folder that
// merely bears such a name gets a warning too many, never a refusal.
const marks: Mark[] = [
  { service: 'Dropbox', named: /^Dropbox( \(.+\))?$/, holds: ['.dropbox', '.dropbox.cache'] },
  { service: 'OneDrive', named: /^OneDrive([ -].+)?$/ },
  { service: 'iCloud Drive', named: /^(iCloud ?Drive|Mobile Documents)$/i },
  { service: 'Google Drive', named: /^(Google ?Drive([ -].+)?|My Drive)$/, holds: ['.tmp.drivedownload'] },
  { service: 'Syncthing', holds: ['.stfolder'] },
  { service: 'Nextcloud', named: /^Nextcloud$/, holds: ['.nextcloudsync.log'] },
  { service: 'ownCloud', named: /^ownCloud$/, holds: ['.owncloudsync.log'] },
];

/**
 * The service that keeps the folder in which a library lies, or null. Such a service copies a file while it is being
 * written, without its write-ahead log, and two machines may both change it: a library can be lost that way.
 */
export function syncingServiceOf(libraryPath: string): SyncingService | null {
  for (let folder = dirname(libraryPath); folder !== dirname(folder); folder = dirname(folder)) {
    const name = parse(folder).base;
    const mark = marks.find(
      ({ named, holds }) =>
        named?.test(name) === true || holds?.some((file) => existsSync(join(folder, file))),
    );
    if (mark !== undefined) return { service: mark.service, folder };
  }
  return null;
}

/** What the window tells about it. */
export function syncingCaution({ service, folder }: SyncingService): string {
  return `The library lies in ${folder}, which ${service} keeps. Such a service may copy the file while it is being written, or mix the changes of two machines, and the library can be damaged. Keep the library in a folder of this computer alone, and let the service have its backups or an export.`;
}
