import type { Photo } from '../model/painting.ts';
import type { PhotoHeader } from '../model/photo/header-fields.ts';
import { photoHeader } from '../model/photo-header.ts';
import { photoProblem, undecodable } from '../model/photo-problem.ts';

export type NamedBlob = Blob & { readonly name?: string };

async function digest(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A fault whose sentence is for the painter. */
export const refusedPhoto = (sentence: string): Error =>
  Object.assign(new Error(sentence), { name: 'PhotoError' });

/** A file that was moved or changed after it was chosen, or that a cloud drive did not hand over. */
async function bytesOf(file: Blob): Promise<ArrayBuffer> {
  try {
    return await file.arrayBuffer();
  } catch {
    throw refusedPhoto("The photo's file could not be read. Choose it again.");
  }
}

/**
 * A file as a photo to be kept, byte for byte, and what its header says. Rejects with a PhotoError,
 * whose message is for the painter, where the bytes already say it is no photo.
 */
export async function photoOf(file: NamedBlob): Promise<{ photo: Photo; header: PhotoHeader }> {
  const bytes = await bytesOf(file);
  const seen = new Uint8Array(bytes);
  const problem = photoProblem(seen);
  const header = photoHeader(seen);
  if (problem || !header?.width || !header.height)
    throw refusedPhoto(problem ?? undecodable(header));
  const photo: Photo = {
    id: crypto.randomUUID(),
    bytes,
    mime: `image/${header.kind}`,
    sha256: await digest(bytes),
    name: file.name ?? '',
  };
  return { photo, header };
}
