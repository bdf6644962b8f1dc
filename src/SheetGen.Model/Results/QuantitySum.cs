namespace SheetGen.Model.Results;

/// <summary>Sums of a quantity over sections.</summary>
public static class QuantitySum
{
    /// <summary>The sum over the sections that have an amount, with everything that others lack.</summary>
    public static Quantity Of(QuantityDefinition definition, IEnumerable<SectionQuantities> sections)
    {
        List<Quantity> parts = [.. sections.Select(s => s.Amounts[definition.Name])];
        List<Quantity> known = [.. parts.Where(p => p.Amount is not null)];
        List<MissingPart> missing = [.. parts.SelectMany(p => p.Missing).Distinct()];
        List<MissingPart> notAsked = [.. parts.SelectMany(p => p.NotAsked).Distinct()];
        IEnumerable<string> notes = known.Select(p => p.Note)
            .Prepend(known.Count > 0 && missing.Count > 0 ? "incomplete: " + MissingPart.InWords(missing) : MissingPart.InWords(missing))
            .Append(MissingPart.InWords(notAsked));
        return new Quantity(
            definition, known.Count == 0 ? null : known.Sum(p => p.Amount!.Value), [.. known.SelectMany(p => p.Trace)],
            string.Join("; ", notes.Where(n => n.Length > 0).Distinct()))
        {
            Missing = missing,
            NotAsked = notAsked,
        };
    }
}
