/** Bytes as kept: deflated where the browser can (RFC 1951), plain elsewhere. */
export interface PackedBytes {
  readonly packing: 'deflate-raw' | 'plain';
  readonly bytes: ArrayBuffer;
}

/** An own copy: the buffer of a view may be larger, or belong to someone else. */
function copied(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes);
}

const through = (bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream) =>
  new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer();

/** Safari before 16.4 has no CompressionStream, and some browsers have it without 'deflate-raw'. */
function deflating(): CompressionStream | null {
  try {
    return new CompressionStream('deflate-raw');
  } catch {
    return null; // kept plain instead
  }
}

export async function packBytes(bytes: Uint8Array): Promise<PackedBytes> {
  const stream = deflating();
  if (!stream) return { packing: 'plain', bytes: copied(bytes).buffer };
  return { packing: 'deflate-raw', bytes: await through(copied(bytes), stream) };
}

export async function unpackBytes({ packing, bytes }: PackedBytes): Promise<Uint8Array> {
  if (packing === 'plain') return new Uint8Array(bytes);
  const stream = new DecompressionStream('deflate-raw');
  return new Uint8Array(await through(new Uint8Array(bytes), stream));
}
