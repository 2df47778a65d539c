import { expect, test } from 'vitest';
import { dataFolder } from '../../../main/hosts/library-place.ts';

// From memory: XDG Base Directory Specification: $XDG_DATA_HOME, else $HOME/.local/share; "if an implementation encounters a
// relative path in any of these variables it should consider the path invalid and ignore it". Apple, File System
// Programming Guide: ~/Library/Application Support. Microsoft, KNOWNFOLDERID: FOLDERID_RoamingAppData is %APPDATA%.
test.each([
  ['linux', {}, '/home/p', '/home/p/.local/share/Tarewing'],
  ['linux', { XDG_DATA_HOME: '/data' }, '/home/p', '/data/Tarewing'],
  ['linux', { XDG_DATA_HOME: 'data' }, '/home/p', '/home/p/.local/share/Tarewing'],
  ['linux', { XDG_DATA_HOME: '' }, '/home/p', '/home/p/.local/share/Tarewing'],
  ['darwin', { XDG_DATA_HOME: '/data' }, '/Users/p', '/Users/p/Library/Application Support/Tarewing'],
  ['win32', { APPDATA: '/p/AppData/Roaming' }, '/p', '/p/AppData/Roaming/Tarewing'],
] as const)(
  'on %s with %j the data lie in the system’s folder for applications',
  (platform, env, home, place) => {
    expect(dataFolder(platform, env, home)).toBe(place);
  },
);
