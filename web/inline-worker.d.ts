declare module '*?worker&inline' {
  const InlineWorker: new () => Worker;
  // biome-ignore lint/style/noDefaultExport: Vite gives the worker so.
  export default InlineWorker;
}
