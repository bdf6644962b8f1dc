using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The amounts of a section while they are measured.</summary>
internal sealed class Amounts(IReadOnlyList<QuantityDefinition> definitions)
{
    private readonly Dictionary<string, QuantityDefinition> _byName = definitions.ToDictionary(d => d.Name);
    private readonly Dictionary<string, Quantity> _all = [];

    public IReadOnlyDictionary<string, Quantity> All => _all;

    public void Set(string name, double amount, IReadOnlyList<string> trace, string note = "") =>
        _all.Add(name, new Quantity(_byName[name], amount, trace, note));

    /// <summary>The amount, or why there is none.</summary>
    public void SetOr(string name, double? amount, IReadOnlyList<string> trace, string missing) =>
        _all.Add(name, new Quantity(_byName[name], amount, amount is null ? [] : trace, amount is null ? missing : ""));
}
