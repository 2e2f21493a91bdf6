import { NAMESPACE, type Spec } from "../../core/define.ts";
import { specs as allSpecs } from "../../functions/index.ts";
import { escapedXml } from "../../xlsx/xml.ts";
import { paramName } from "./type-library.ts";

const OOR = 'xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema"';

/**
 * What the office program's function wizard shows: names, descriptions, arguments. With this in its
 * configuration it knows the functions without starting the component. The wizard calls every argument of
 * ours optional, as any may hold anything; what cannot be left out is said in its description.
 */
export function calcAddIns(specs: readonly Spec[] = allSpecs): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<oor:component-data ${OOR} oor:name="CalcAddIns" oor:package="org.openoffice.Office">`,
    `<node oor:name="AddInInfo">${node(NAMESPACE, `<node oor:name="AddInFunctions">${specs.map(functionNode).join("")}</node>`)}</node>`,
    "</oor:component-data>",
    "",
  ].join("\n");
}

const functionNode = ({ name, summary, inputs }: Spec): string =>
  node(
    name,
    text("DisplayName", `${NAMESPACE}.${name}`) +
      text("Description", summary) +
      '<prop oor:name="Category"><value>Add-In</value></prop>' +
      `<node oor:name="Parameters">${inputs.map(({ name: input, param }, i) => node(paramName(i), text("DisplayName", input) + text("Description", param.isOptional ? param.help : `${param.help} (needed)`))).join("")}</node>`,
  );

const node = (name: string, content: string): string => `<node oor:name="${name}" oor:op="replace">${content}</node>`;

const text = (name: string, value: string): string => `<prop oor:name="${name}"><value xml:lang="en">${escapedXml(value)}</value></prop>`;
