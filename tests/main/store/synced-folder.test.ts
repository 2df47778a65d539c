import { mkdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { syncingCaution, syncingServiceOf } from '../../../main/store/synced-folder.ts';
import { temporaryFolder } from './temporary-folder.ts';

const folder = temporaryFolder();

test.each([
  ['Dropbox', ['Dropbox', 'flying']],
  ['Dropbox', ['Dropbox (Hangar Club)']],
  ['OneDrive', ['OneDrive - Hangar Club', 'Documents']],
  ['iCloud Drive', ['Library', 'Mobile Documents', 'com~apple~CloudDocs']],
  ['iCloud Drive', ['iCloudDrive']],
  ['Google Drive', ['Google Drive', 'flying']],
  ['Google Drive', ['Library', 'CloudStorage', 'GoogleDrive-someone', 'My Drive']],
  ['Nextcloud', ['Nextcloud', 'a', 'b', 'c']],
])('%s is recognised by the name of its folder in %j', (service, names) => {
  expect(syncingServiceOf(folder.join(...names, 'mine.tarewing'))?.service).toBe(service);
});

test('a service is recognised by the mark that it leaves at the top of what it keeps', () => {
  mkdirSync(folder.join('shared', '.stfolder'), { recursive: true });
  const found = syncingServiceOf(folder.join('shared', 'deep', 'mine.tarewing'));
  expect(found).toEqual({ service: 'Syncthing', folder: folder.join('shared') });
  if (found !== null) expect(syncingCaution(found)).toContain('which Syncthing keeps');
});

test('an ordinary folder gets no warning, nor one that only resembles a service', () => {
  for (const name of ['Documents', 'Dropboxes', 'OneDriver', 'Nextcloud notes'])
    expect(syncingServiceOf(folder.join(name, 'mine.tarewing'))).toBeNull();
});
