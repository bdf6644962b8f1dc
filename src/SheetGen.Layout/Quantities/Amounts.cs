using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The amounts of a section while they are measured.</summary>
internal sealed class Amounts(IReadOnlyList<QuantityDefinition> definitions, Wall wall, Section section)
{
    private readonly Dictionary<string, QuantityDefinition> _byName = definitions.ToDictionary(d => d.Name);
    private readonly Dictionary<string, Quantity> _all = [];

    public IReadOnlyDictionary<string, Quantity> All => _all;

    public void Set(string name, double amount, IReadOnlyList<string> trace, string note = "") =>
        _all.Add(name, new Quantity(_byName[name], amount, trace, note));

    /// <summary>An amount from which a part of the section is missing.</summary>
    public void SetShort(string name, double amount, IReadOnlyList<string> trace, MissingPart missing) =>
        _all.Add(name, new Quantity(_byName[name], amount, trace, MissingPart.InWords([missing])) { Missing = [missing] });

    /// <summary>The amount, or what the wall lacks.</summary>
    public void SetOr(string name, double? amount, IReadOnlyList<string> trace, string what, string key, string note = "") =>
        Add(name, amount, trace, new MissingPart(wall, null, what, key), note);

    /// <summary>The amount, or what the section lacks.</summary>
    public void SetOrSection(string name, double? amount, IReadOnlyList<string> trace, string what, string key) =>
        Add(name, amount, trace, new MissingPart(wall, section, what, key), "");

    /// <summary>The amount, or what the project lacks.</summary>
    public void SetOrProject(string name, double? amount, IReadOnlyList<string> trace, string what, string key) =>
        Add(name, amount, trace, new MissingPart(null, null, what, key), "");

    /// <summary>No amount: the wall does not ask for it.</summary>
    public void NotAsked(string name, string what, string key)
    {
        var part = new MissingPart(wall, null, what, key);
        _all.Add(name, new Quantity(_byName[name], null, [], MissingPart.InWords([part])) { NotAsked = [part] });
    }

    /// <summary>No amount, for the same reasons as another quantity.</summary>
    public void Like(string name, string other) => _all.Add(name, _all[other] with { Definition = _byName[name], Amount = null, Trace = [] });

    private void Add(string name, double? amount, IReadOnlyList<string> trace, MissingPart missing, string note) => _all.Add(name, amount is null
        ? new Quantity(_byName[name], null, [], MissingPart.InWords([missing])) { Missing = [missing] }
        : new Quantity(_byName[name], amount, trace, note));
}
