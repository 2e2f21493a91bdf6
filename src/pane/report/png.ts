import type { Drawing } from "../../drawings/drawing.ts";

/** Dots of the picture for one of the drawing, so that it is sharp on paper too. */
const SHARPNESS = 3;

/**
 * A drawing as a PNG file in Base64, black on white whatever the theme. The drawing goes through an
 * address of its own (`data:`), which the pane's policy allows for pictures already.
 */
export async function pngOf({ svg, width, height }: Drawing): Promise<string> {
  const drawn = await loaded(`data:image/svg+xml,${encodeURIComponent(svg.replace("<svg", '<svg color="#000000"'))}`);
  const canvas = document.createElement("canvas");
  canvas.width = width * SHARPNESS;
  canvas.height = height * SHARPNESS;
  const ink = canvas.getContext("2d")!;
  ink.fillStyle = "#FFFFFF";
  ink.fillRect(0, 0, canvas.width, canvas.height);
  ink.drawImage(drawn, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^[^,]*,/, "");
}

function loaded(address: string): Promise<HTMLImageElement> {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = () => reject(new Error("this drawing did not become a picture"));
    image.src = address;
  });
}
