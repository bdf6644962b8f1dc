using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of a pay item set, a file of its own.</summary>
internal static class PayItemKeys
{
    public static Key Root { get; } = Map("pay item set", "What an agency pays for.",
        Integer("format", "Format of the file.", new ValueRange(1, true, 1), "1") with { Required = true },
        Text("name", "Name of the agency or set.", "Generic") with { Required = true },
        Text("notice", "What stands beside the name in the workbook.", "Compare every item with the contract."),
        List("items", "The pay items, in order.", 1, Map("pay item", "A pay item.",
            Text("number", "Number of the item, used by prices.", "611-01") with { Required = true },
            Text("description", "Description.", "Soil nails") with { Required = true },
            Text("unit", "Unit of measure.", "LF") with { Required = true },
            Text("unit_metric", "Unit of measure in a metric project, where it differs.", "m"),
            Text("quantity", "Expression with + - * / ( ) over the names of the quantities; of one wall or stage as pay_length[wall North], pay_length[stage 2]; a number may have a unit, as 0.5 ft.", "shotcrete_volume / 27") with { Required = true },
            Text("quantity_metric", "The expression in a metric project, where it differs.", "shotcrete_volume"),
            Flag("convert", "Whether the quantity is converted from the project's units to the item's; otherwise the item's unit must be the project's own, or the expression converts it (/ 27 for CY).", "true") with { Default = "false" },
            Map("rounding", "How the quantity is rounded, once; before it is brought to 0.0001 of the unit, so that binary noise buys nothing.",
                Choice("direction", "To the next step up (away from 0), down (towards 0), or to the nearest.", "up", "up", "down", "nearest") with { Required = true },
                Integer("decimals", "Decimals kept; -1 to -3 round to tens, hundreds and thousands.", new ValueRange(-3, true, 6), "0"),
                Number("step", "Step of the rounded quantity, in place of decimals.", new ValueRange(1e-6, true, 1e6), "0.25"),
                Choice("each", "What is rounded: the total, each nail, or each wall.", "total", "total", "nail", "wall") with { Default = "total" }) with
            { Required = true },
            Text("measured", "How the item is measured, in words; {pay_length_from} stands for the face or the back of the shotcrete, as the project file says.", "along the bar") with { Required = true },
            List("subsidiary", "What is in the item and not paid by itself.", 0, Text("part", "A part.", "grout")))) with
        { Required = true });
}
