import { createRequire } from "node:module";

const require = createRequire(import.meta.url);

/** The faces that everything is laid out by: with them every machine draws and prints the same. */
export const FONT_FILES = ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"].map((name) =>
  require.resolve(`dejavu-fonts-ttf/ttf/${name}`),
);
