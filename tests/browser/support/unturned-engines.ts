/** As this browser decodes. */
export const decode = globalThis.createImageBitmap.bind(globalThis);

type Source = Parameters<typeof decode>[0];

/** The same file without what tells of the camera's turn: as an engine decodes it that does not look there. */
async function withoutTag(source: Source): Promise<Source> {
  if (!(source instanceof Blob)) return source;
  const bytes = new Uint8Array(await source.arrayBuffer());
  const tag = String.fromCharCode(...bytes.subarray(0, 4000)).indexOf('Exif');
  if (tag >= 0) bytes[tag] = 88;
  return new Blob([bytes], { type: source.type });
}

/** Engines that leave the camera's turn in: one passes the wish over, the other does not know its word. */
export const unturnedEngines = {
  'passes the wish over': async (source: Source, options: ImageBitmapOptions = {}) =>
    decode(await withoutTag(source), options),
  'does not know the word': async (source: Source, options: ImageBitmapOptions = {}) => {
    if (options.imageOrientation === 'from-image') throw new TypeError('not an ImageOrientation');
    return decode(await withoutTag(source), options);
  },
};
