"""Lists what openpyxl sees of a workbook: sheets, page setup, counts of names, rules and error values."""
import sys

import openpyxl

book = openpyxl.load_workbook(sys.argv[1])
print(",".join(book.sheetnames))
for sheet in book:
    print(sheet.title, sheet.freeze_panes, sheet.print_title_rows, sheet.page_setup.orientation, sheet.page_setup.fitToWidth, sep="|")
print("names", len(book.defined_names.definedName))
print("rules", sum(len(sheet.data_validations.dataValidation) for sheet in book))
values = openpyxl.load_workbook(sys.argv[1], data_only=True)
cells = (cell.value for sheet in values for row in sheet.iter_rows() for cell in row)
ERRORS = {"#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"}
print("errors", sum(1 for value in cells if value in ERRORS))
print("tables", sum(len(sheet.tables) for sheet in book))
print("charts", sum(len(sheet._charts) for sheet in openpyxl.load_workbook(sys.argv[1])))
print("protected", sum(1 for sheet in book if sheet.protection.sheet and not sheet.protection.password))
print("formulas open", sum(1 for sheet in book for row in sheet.iter_rows() for cell in row if cell.data_type == "f" and not cell.protection.locked))
print("inputs locked", sum(1 for sheet in book for row in sheet.iter_rows() for cell in row if cell.fill.fgColor.rgb == "FFFFF2CC" and cell.protection.locked))
print("links", sum(1 for sheet in book for row in sheet.iter_rows() for cell in row if cell.hyperlink))
print("back", sum(1 for sheet in book if sheet.title != "Summary" and sheet["A2"].hyperlink and "Summary" in sheet["A2"].hyperlink.location))
print("quoted", sum(1 for sheet in book for row in sheet.iter_rows() for cell in row if cell.data_type == "s" and cell.style and cell.quotePrefix))
