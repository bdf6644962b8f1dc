namespace SheetGen.Dxf;

/// <summary>The groups from one group 0 to the next: an entity, a table entry, an object.</summary>
internal sealed class Record
{
    private readonly ReadLog _log;

    /// <summary>Sorts groups into data, extended data and the bracketed lists of handles (group 102).</summary>
    internal Record(Group head, IReadOnlyList<Group> groups, ReadLog log)
    {
        const int ExtendedData = 1000, Brackets = 102, Embedded = 101;
        (Kind, Line, _log) = (head.Value.Trim().ToUpperInvariant(), head.Line, log);
        var bracketed = false;
        var inData = true;
        foreach (var group in groups)
        {
            if (group.Code >= ExtendedData)
                XGroups.Add(group);
            else if (group.Code == Brackets)
                bracketed = group.Value.StartsWith('{');
            else if (bracketed)
                Bracketed.Add(group);
            else if (group.Code == Embedded)
                inData = false;
            else if (inData && group.Code != 999)
                Groups.Add(group);
        }
    }

    /// <summary>The value of group 0, in capitals.</summary>
    internal string Kind { get; }

    /// <summary>The line of that value.</summary>
    internal int Line { get; }

    internal List<Group> Groups { get; } = [];

    internal List<Group> XGroups { get; } = [];

    internal List<Group> Bracketed { get; } = [];

    internal string? Handle => Raw(Kind == "DIMSTYLE" && Has(105) ? 105 : 5)?.Trim().ToUpperInvariant();

    internal bool Has(int code) => Find(code) is not null;

    internal string? Raw(int code) => Find(code)?.Value;

    /// <summary>A string, decoded.</summary>
    internal string Text(int code, string otherwise = "") => Raw(code) is { } raw ? StringCoding.Decode(raw) : otherwise;

    /// <summary>A name, decoded and without blanks around it.</summary>
    internal string Name(int code, string otherwise = "")
    {
        var name = Text(code).Trim();
        return name.Length > 0 ? name : otherwise;
    }

    internal double Real(int code, double otherwise = 0) => Find(code) is { } group ? ToReal(group) : otherwise;

    internal int Integer(int code, int otherwise = 0) => Find(code) is { } group ? ToInteger(group) : otherwise;

    /// <summary>X, Y and Z of the groups code, code + 10 and code + 20.</summary>
    internal Xyz Point(int code) => new(Real(code), Real(code + 10), Real(code + 20));

    internal IEnumerable<Group> All(int code) => Groups.Where(g => g.Code == code);

    internal double ToReal(Group group)
    {
        if (NumberCoding.TryParse(group.Value, out double value))
            return value;
        _log.Fail(group.Line, $"{Kind}: expected a number for group code {group.Code}, found {ReadLog.Quote(group.Value)}");
        return 0;
    }

    internal int ToInteger(Group group)
    {
        if (NumberCoding.TryParse(group.Value, out int value))
            return value;
        _log.Fail(group.Line, $"{Kind}: expected a whole number for group code {group.Code}, found {ReadLog.Quote(group.Value)}");
        return 0;
    }

    private Group? Find(int code)
    {
        foreach (var group in Groups)
        {
            if (group.Code == code)
                return group;
        }
        return null;
    }
}
