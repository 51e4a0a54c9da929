// As much of opencv-js 4.12.0 as the benches use; its module comes without usable types of its own.
export interface Mat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data32S: Int32Array;
  convertTo(to: Mat, type: number, scale?: number): void;
  delete(): void;
}

export interface MatVector {
  size(): number;
  /** A mat of its own, to be deleted. */
  get(i: number): Mat;
  delete(): void;
}

export interface OpenCv {
  readonly Mat: {
    new (): Mat;
    new (rows: number, columns: number, type: number): Mat;
    new (rows: number, columns: number, type: number, value: readonly number[]): Mat;
  };
  readonly MatVector: new () => MatVector;
  readonly Size: new (width: number, height: number) => object;
  readonly TermCriteria: new (type: number, rounds: number, epsilon: number) => object;
  readonly CV_8U: number;
  readonly CV_8UC4: number;
  readonly CV_32F: number;
  readonly CV_32S: number;
  readonly COLOR_RGBA2RGB: number;
  readonly COLOR_RGB2Lab: number;
  readonly BORDER_DEFAULT: number;
  readonly TermCriteria_EPS: number;
  readonly TermCriteria_MAX_ITER: number;
  readonly KMEANS_PP_CENTERS: number;
  readonly RETR_LIST: number;
  readonly CHAIN_APPROX_NONE: number;
  setRNGSeed(seed: number): void;
  cvtColor(from: Mat, to: Mat, code: number): void;
  split(from: Mat, to: MatVector): void;
  GaussianBlur(
    from: Mat,
    to: Mat,
    size: object,
    sigmaX: number,
    sigmaY: number,
    border: number,
  ): void;
  bilateralFilter(
    from: Mat,
    to: Mat,
    d: number,
    colour: number,
    space: number,
    border: number,
  ): void;
  kmeans(
    samples: Mat,
    k: number,
    labels: Mat,
    criteria: object,
    attempts: number,
    flags: number,
    centres: Mat,
  ): number;
  inRange(from: Mat, low: Mat, high: Mat, to: Mat): void;
  connectedComponentsWithStats(
    from: Mat,
    labels: Mat,
    stats: Mat,
    centroids: Mat,
    connectivity: number,
    type: number,
  ): number;
  findContours(from: Mat, contours: MatVector, hierarchy: Mat, mode: number, method: number): void;
  Sobel(from: Mat, to: Mat, type: number, dx: number, dy: number, size: number): void;
  magnitude(x: Mat, y: Mat, to: Mat): void;
}
