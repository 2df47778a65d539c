import { expect, test } from 'vitest';
import { fileName, folderName, folderPath } from '../../../renderer/app/fileName.ts';

test('a path of either kind of system gives its file, the folder’s name and the folder', () => {
  expect(fileName('/home/pilot/Documents/own.tarewing')).toBe('own.tarewing');
  expect(folderName('C:\\Users\\Pilot\\own.tarewing')).toBe('Pilot');
  expect(folderPath('/home/pilot/own.tarewing')).toBe('/home/pilot');
  expect(folderPath('own.tarewing')).toBeNull();
});
