/** WebAssembly of an AssemblyScript as base64: see app/build/assembly.mjs. */
declare module '*?assembly' {
  const code: string;
  export default code;
}
