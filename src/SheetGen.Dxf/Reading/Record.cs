namespace SheetGen.Dxf;

/// <summary>The groups from one group 0 to the next: an entity, a table entry, an object.</summary>
internal sealed class Record
{
    /// <summary>Shared by the records that have none, which is never added to.</summary>
    private static readonly List<Group> None = [];

    private readonly ReadLog _log;
    private readonly List<Group> _xGroups = None, _bracketed = None;

    /// <summary>Sorts groups into data, extended data and the bracketed lists of handles (group 102).</summary>
    internal Record(Group head, IReadOnlyList<Group> groups, ReadLog log)
    {
        const int ExtendedData = 1000, Brackets = 102, Embedded = 101;
        (Kind, Line, _log) = (KindOf(head.Value), head.Line, log);
        Groups = groups.Count == 0 ? None : new(groups.Count);
        var bracketed = false;
        var inData = true;
        foreach (var group in groups)
        {
            if (group.Code >= ExtendedData)
                AddTo(ref _xGroups, group);
            else if (group.Code == Brackets)
                bracketed = group.Value.StartsWith('{');
            else if (bracketed)
                AddTo(ref _bracketed, group);
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

    internal List<Group> Groups { get; }

    internal List<Group> XGroups => _xGroups;

    internal List<Group> Bracketed => _bracketed;

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

    private static void AddTo(ref List<Group> list, Group group)
    {
        if (list == None)
            list = [];
        list.Add(group);
    }

    /// <summary>In capitals, and one string for all records where the file has it so.</summary>
    private static string KindOf(string value)
    {
        var plain = value.Trim();
        return plain.AsSpan().ContainsAnyInRange('a', 'z') || !System.Text.Ascii.IsValid(plain) ? plain.ToUpperInvariant() : plain;
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
