import { expect, test } from 'vitest';
import { fileName, folderPath } from '../../../renderer/app/fileName.ts';

test('a path of either kind of system gives its file and its folder', () => {
  expect(fileName('/home/pilot/Documents/own.tarewing')).toBe('own.tarewing');
  expect(folderPath('C:\\Users\\Pilot\\own.tarewing')).toBe('C:\\Users\\Pilot');
  expect(folderPath('/home/pilot/own.tarewing')).toBe('/home/pilot');
  expect(folderPath('own.tarewing')).toBeNull();
});
