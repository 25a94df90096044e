import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

// The page goes into the Python package. In development the server's calls are handed on to a workroom
// that was started with `notchbook open --port 8765 --no-browser`.
export default defineConfig({
  plugins: [svelte()],
  build: { outDir: "../src/notchbook/workroom/static", emptyOutDir: true, assetsInlineLimit: 0 },
  server: { proxy: { "/api": "http://127.0.0.1:8765" } },
});
