import jsQr from "jsqr";
import { PNG } from "pngjs";
import { randomBytes } from "node:crypto";
import { launchBrowser } from "./browser/browser.ts";
import { labelSvg } from "../services/shop/src/labels/label.ts";
const readQr: any = (jsQr as any).default ?? jsQr;
const browser = await launchBrowser();
const page = await (await browser.newContext({viewport:{width:1240,height:580}})).newPage();
let bad = 0; const N = 150;
for (let i = 0; i < N; i++) {
  const url = `http://127.0.0.1:44215/places/place_01a21d12f3587446${randomBytes(8).toString("hex")}`;
  const svg = labelSvg({ url, title: "A very long name that no label of this size could ever hold on two lines <&>", lines: [] });
  await page.setContent(`<style>body{margin:0}svg{width:1240px;height:580px}</style>${svg}`);
  const png = PNG.sync.read(await page.screenshot());
  const got = readQr(new Uint8ClampedArray(png.data), png.width, png.height)?.data;
  if (got !== url) { bad++; console.log(i, url, got); }
}
console.log(bad, "of", N);
await browser.close();
