import type { CodeModules } from "@rimwise/drawing";
import { create } from "qrcode";

/** A QR code that opens an address; a sixth of it may be dirty (level M of ISO/IEC 18004). */
export function codeOf(url: string): CodeModules {
  const { modules } = create(url, { errorCorrectionLevel: "M" });
  return { opens: url, size: modules.size, isDark: Array.from(modules.data, (module) => module === 1) };
}
