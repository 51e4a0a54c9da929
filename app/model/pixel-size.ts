export interface PixelSize {
  readonly width: number;
  readonly height: number;
}
