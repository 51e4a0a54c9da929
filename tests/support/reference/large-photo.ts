import sharp from 'sharp';

/** A photograph as a camera of 12 megapixels hands it over, made from a smaller one: a file to choose. */
export async function photoOf12Megapixels(file: string) {
  const buffer = await sharp(file)
    .resize(4000, 3000, { fit: 'cover' })
    .jpeg({ quality: 90 })
    .toBuffer();
  return { name: 'twelve.jpg', mimeType: 'image/jpeg', buffer };
}
