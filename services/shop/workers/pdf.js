import { parentPort, workerData } from "node:worker_threads";
import PdfDocument from "pdfkit";

/** Points to a millimetre. */
const PT_PER_MM = 72 / 25.4;

/** Letters were laid out by their own widths: nothing is moved together or joined. */
const AS_LAID_OUT = { kern: false, liga: false, clig: false, dlig: false };

/** What the library makes its identity of, in place of the clock: the same pages are the same bytes. */
const NO_MOMENT = new Date(0);

const open = new Map();

parentPort.on("message", ({ id, kind, ...rest }) => {
  try {
    if (kind === "begin") open.set(id, begin(id, rest));
    else if (kind === "page") addPage(open.get(id), rest.page);
    else if (kind === "end") end(open.get(id));
    else open.delete(id);
  } catch (error) {
    open.delete(id);
    parentPort.postMessage({ id, error: String(error?.stack ?? error) });
  }
});

function begin(id, { title, language }) {
  const pdf = new PdfDocument({
    autoFirstPage: false,
    margin: 0,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: language,
    info: { Title: title, Producer: "Rimwise", Creator: "Rimwise", CreationDate: NO_MOMENT },
  });
  delete pdf.info.CreationDate;
  // It would write the title into XML as it is, markup and all, and the moment; both are left to the document's information.
  pdf.endMetadata = () => {};
  pdf.registerFont("normal", workerData.fonts.normal);
  pdf.registerFont("bold", workerData.fonts.bold);
  const chunks = [];
  pdf.on("data", (chunk) => chunks.push(chunk));
  pdf.on("end", () => {
    const bytes = new Uint8Array(Buffer.concat(chunks));
    parentPort.postMessage({ id, bytes }, [bytes.buffer]);
  });
  const root = pdf.struct("Document");
  pdf.addStructure(root);
  return { id, pdf, root };
}

function addPage({ pdf, root }, { widthMm, heightMm, nodes }) {
  pdf.addPage({ size: [widthMm * PT_PER_MM, heightMm * PT_PER_MM], margin: 0 });
  pdf.scale(PT_PER_MM);
  addNodes(pdf, root, nodes);
}

function end({ id, pdf, root }) {
  root.end();
  pdf.end();
  open.delete(id);
}

/** Content stands in an element of the structure, or is passed over when it is read aloud. */
function addNodes(pdf, parent, nodes) {
  for (const node of nodes) {
    if (node.kind === "passed-over") {
      pdf.markContent("Artifact", { type: node.of });
      for (const each of node.content) draw(pdf, each);
      pdf.endMarkedContent();
    } else if (node.kind === "content") {
      parent.add(() => {
        for (const each of node.content) draw(pdf, each);
      });
    } else {
      const { element, alt, actual } = node;
      const child = pdf.struct(element, { ...(alt && { alt }), ...(actual && { actual }) });
      parent.add(child);
      addNodes(pdf, child, node.nodes);
    }
  }
}

function draw(pdf, each) {
  if (each.kind === "text") drawText(pdf, each);
  else drawPath(pdf, each);
}

function drawText(pdf, { xMm, yMm, sizeMm, weight, text, widthMm }) {
  pdf.font(weight).fontSize(sizeMm).fillColor("#000").text(text, xMm, yMm, {
    lineBreak: false,
    baseline: "alphabetic",
    features: AS_LAID_OUT,
    textWidth: widthMm,
    wordCount: 1,
  });
}

function drawPath(pdf, { data, tone, stroke }) {
  pdf.path(data);
  if (stroke !== undefined) {
    pdf.lineWidth(stroke.widthMm).strokeColor(stroke.tone);
    pdf.lineJoin(stroke.isRound ? "round" : "miter");
    if (stroke.dashMm === undefined) pdf.undash();
    else pdf.dash(stroke.dashMm);
  }
  if (tone !== undefined) pdf.fillColor(tone);
  if (tone !== undefined && stroke !== undefined) pdf.fillAndStroke(tone, stroke.tone, "even-odd");
  else if (tone !== undefined) pdf.fill("even-odd");
  else if (stroke !== undefined) pdf.stroke();
}
