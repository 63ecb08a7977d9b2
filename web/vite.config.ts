import { defineConfig } from "vite";

export default defineConfig({
  base: "/static/",
  esbuild: { jsx: "automatic", jsxImportSource: "preact", legalComments: "eof" },
  build: {
    outDir: "../src/stylobate/app/web/static",
    emptyOutDir: true,
    target: "es2022",
    modulePreload: false,
    cssCodeSplit: false,
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
    rollupOptions: {
      output: {
        entryFileNames: "page.js",
        chunkFileNames: "[name].js",
        assetFileNames: "[name][extname]",
      },
    },
  },
});
