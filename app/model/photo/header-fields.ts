/** Picture formats told apart by their content, never by the file's name. */
export type PhotoKind = 'jpeg' | 'png' | 'gif' | 'webp' | 'bmp' | 'avif' | 'heic';

/** What a photo's own bytes say about it, before anything is decoded. */
export interface PhotoHeader {
  readonly kind: PhotoKind;
  /** Size as stored, px, before the camera's turn is undone; 0 where the file does not say. */
  readonly width: number;
  readonly height: number;
  /** EXIF orientation 1..8; 1 where there is none or it is broken. 5..8 swap the sides. */
  readonly orientation: number;
  /** False where the bytes end before the picture does. */
  readonly complete: boolean;
}
