declare module 'big-list-of-naughty-strings' {
  const strings: readonly string[];
  // biome-ignore lint/style/noDefaultExport: the package is a JSON file.
  export default strings;
}
