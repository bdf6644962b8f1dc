using System.Globalization;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The formulas of a pay item over the quantities of the workbook.</summary>
internal sealed class BidFormula(BidLine line, QuantityTable table, QuantitySheet quantities, NailSheet nails)
{
    private PayItem Item => line.Item;

    /// <summary>The unrounded quantity; empty where something that it needs is not given, or nobody asks for any of it.</summary>
    public string Raw
    {
        get
        {
            string value = Value(Cell);
            string[] needed = [.. Item.Quantity.References.Where(r => line.Raw is null || !IsUnasked(r)).Select(r => Cell(r) + "=\"\"")];
            return needed.Length == 0 ? $"IFERROR({value},\"\")" : $"IFERROR(IF(OR({string.Join(",", needed)}),\"\",{value}),\"\")";
        }
    }

    /// <summary>The quantity rounded by the item's rule: once, or each wall or nail before they are added up.</summary>
    /// <param name="raw">Cell with the unrounded quantity.</param>
    public string Rounded(string raw)
    {
        string rounded = Item.Rounding.Scope switch
        {
            RoundingScope.Wall when quantities.Walls.Count > 0 => string.Join("+", quantities.Walls.Select((w, i) => Round(Value(r => r.Wall is null || r.Wall == w.Name
                ? r.Stage is null ? $"N({quantities.OfWall(r.Name, i)})" : Constant(r with { Wall = w.Name }) : "0")))),
            RoundingScope.Nail => $"SUMPRODUCT(({nails.Table.Range("kind")}<>\"verification\")*{Round(Value(Column))})",
            _ => Round(raw),
        };
        return $"IFERROR(IF({raw}=\"\",\"\",{rounded}),\"\")";
    }

    /// <summary>What keeps the amount from being whole: the price, the quantities, or no price while others are priced.</summary>
    public string State(string price, string prices, string raw)
    {
        string[] states = [.. Item.Quantity.References.Where(r => r.IsTotal).Select(r => QuantitySheet.StateNameOf(r.Name))];
        string Any(string function, Func<string, string> test) => states.Length == 0 ? "FALSE" : $"{function}({string.Join(",", states.Select(test))})";
        string isIncomplete = Any("OR", s => $"LEFT({s},{QuantitySheet.Incomplete.Length})=\"{QuantitySheet.Incomplete}\"");
        string isUnasked = states.Length < Item.Quantity.References.Count ? "FALSE" : Any("AND", s => $"{s}=\"{QuantitySheet.NotAsked}\"");
        return $"IF(ISERROR({price}),\"{BidSheet.WrongPrice}\",IF(ISTEXT({price}),\"{BidSheet.WrongPrice}\",IF({isUnasked},\"\","
            + $"IF({isIncomplete},\"{BidSheet.Quantity} {QuantitySheet.Incomplete}\",IF({raw}=\"\",\"{BidSheet.Quantity} {QuantitySheet.NotGiven}\","
            + $"IF(AND({price}=\"\",COUNT({prices})>0),\"{BidSheet.NoPrice}\",\"\"))))))";
    }

    /// <summary>The words that <see cref="State"/> gives.</summary>
    public string StoredState(bool isPriced)
    {
        IReadOnlyList<QuantityReference> used = Item.Quantity.References;
        if (used.Count > 0 && used.All(r => r.IsTotal && table.Of(r).State == QuantityState.NotAsked))
            return "";
        if (used.Any(r => r.IsTotal && table.Of(r).State == QuantityState.Incomplete))
            return $"{BidSheet.Quantity} {QuantitySheet.Incomplete}";
        return line.Raw is null ? $"{BidSheet.Quantity} {QuantitySheet.NotGiven}" : line.Price is null && isPriced ? BidSheet.NoPrice : "";
    }

    private bool IsUnasked(QuantityReference reference) => table.Of(reference).State == QuantityState.NotAsked;

    private string Value(Func<QuantityReference, string> cell)
    {
        string value = Item.Quantity.ToFormula(r => IsUnasked(r) && line.Raw is not null ? $"N({cell(r)})" : cell(r));
        return Item.Factor == 1 ? value : FormattableString.Invariant($"({value})*{Item.Factor:R}");
    }

    private string Cell(QuantityReference reference)
    {
        if (reference.Wall is { } wall && reference.Stage is null && quantities.Walls.FindIndex(w => w.Name == wall) is >= 0 and var place)
            return quantities.OfWall(reference.Name, place);
        if (reference.Wall is null && reference.Stage is { } stage && quantities.Stages.FindIndex(s => s == stage) is >= 0 and var at)
            return quantities.OfStage(reference.Name, at);
        return reference.IsTotal || reference.Stage is null ? QuantitySheet.NameOf(reference.Name) : Constant(reference);
    }

    private string Constant(QuantityReference reference) => FormattableString.Invariant($"({table.Of(reference).Amount ?? 0:R})");

    private string Column(QuantityReference reference)
    {
        string column = reference.Name switch
        {
            QuantityName.NailCount => "1",
            QuantityName.PayLength => nails.Table.Range("pay"),
            QuantityName.FaceLength or QuantityName.HoleLength => nails.Table.Range("length"),
            QuantityName.BackLength => nails.Table.Range("back"),
            QuantityName.Projection => nails.Table.Range("projection"),
            QuantityName.BarLength => nails.Table.Range("bar_length"),
            QuantityName.BarWeight => nails.Table.Range("weight"),
            QuantityName.HoleVolume => nails.Table.Range("hole_volume"),
            QuantityName.GroutVolume => nails.Table.Range("grout"),
            _ => "0",
        };
        if (reference.Wall is { } wall)
            return $"({nails.Table.Range("wall")}=\"{wall.Replace("\"", "\"\"", StringComparison.Ordinal)}\")*{column}";
        if (reference.Stage is null)
            return column;
        IEnumerable<string> sections = Enumerable.Range(0, table.Sections.Count).Where(i => table.Sections[i].Section.Stage == reference.Stage)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"({nails.Table.Range("no")}={i + 1})"));
        return $"({string.Join("+", sections)})*{column}";
    }

    private string Round(string value)
    {
        PayRounding rule = Item.Rounding;
        string step = rule.Step.ToString("0.#########", CultureInfo.InvariantCulture);
        string function = rule.Direction switch { RoundingDirection.Up => "ROUNDUP", RoundingDirection.Down => "ROUNDDOWN", _ => "ROUND" };
        return FormattableString.Invariant($"ROUND({function}(ROUND(ROUND({value},{rule.QuantumDecimals})/{step},6),0)*{step},{rule.Decimals})");
    }
}
