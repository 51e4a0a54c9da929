import { expect, test } from 'vitest';
import { photoHeader } from '../../../../app/core/reference/photo-header.ts';
import { photoProblem } from '../../../../app/core/reference/photo-problem.ts';
import {
  photoProblemInWords,
  undecodable,
} from '../../../../app/core/words/reference/photo-problem.ts';
import { caseFile } from '../../../support/reference/case-file.ts';

function refusal(bytes: Uint8Array): string {
  const problem = photoProblem(bytes);
  return problem ? photoProblemInWords(problem) : '';
}

test.each([
  ['zero-bytes.jpg', /The file is empty/],
  ['text-named.jpg', /not a picture/],
  ['script.svg', /SVG/],
  ['truncated-60-percent.jpg', /incomplete/],
  ['truncated-50-percent.png', /incomplete/],
  ['bomb-16000x16000-1bit.png', /256 megapixels, and 150 is the limit/],
  ['bomb-30000x30000-1bit.png', /900 megapixels, and 150 is the limit/],
])('%s is refused from its bytes, with the cause', (name, cause) => {
  expect(refusal(caseFile(name))).toMatch(cause);
});

test.each([
  'exif-orient-8.jpg',
  'exif-broken-offset.jpg',
  'huge-108mp-12000x9000.jpg',
  'really-a-jpeg.png',
  'picture.bmp',
  'picture.avif',
  'animated.gif',
  'animated.webp',
  'line-5000x1.png',
  'one-pixel.png',
  'patches-p3-tagged.png',
  'picture.heic', // some browsers open it: only a failed try is spoken of
])('%s: nothing against it', (name) => {
  expect(photoProblem(caseFile(name))).toBeNull();
});

test('a photo the browser could not open is named for what it is', () => {
  expect(undecodable(photoHeader(caseFile('picture.heic')))).toMatch(/HEIC.*JPEG/);
  expect(undecodable(photoHeader(caseFile('exif-orient-1.jpg')))).toMatch(/damaged/);
});

test('an AVIF that can not be opened may be damaged; a reader other than a browser is named', () => {
  const avif = photoHeader(caseFile('picture.avif'));
  expect(undecodable(avif)).toMatch(/damaged, or this browser can't read AVIF/);
  expect(undecodable(avif, 'this command')).not.toMatch(/browser/);
  expect(undecodable(photoHeader(caseFile('picture.heic')), 'this command')).not.toMatch(/browser/);
});

// ISO/IEC 18181-2:2024, 9.1: signature of the container; ISO/IEC 18181-1: of the codestream.
test.each([
  [[0xff, 0x0a, 0xfa, 0x1f, 0x01]],
  [[0, 0, 0, 12, 0x4a, 0x58, 0x4c, 0x20, 0x0d, 0x0a, 0x87, 0x0a]],
])('JPEG XL is named, with the way to a JPEG', (bytes) => {
  expect(refusal(Uint8Array.from(bytes))).toMatch(/JPEG XL.*JPEG/);
});

test('raw and TIFF files are told what to do', () => {
  expect(refusal(new Uint8Array([73, 73, 42, 0, 8, 0, 0, 0]))).toMatch(/raw.*Export it as JPEG/);
});
