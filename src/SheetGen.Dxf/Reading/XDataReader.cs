namespace SheetGen.Dxf;

/// <summary>Reads extended data.</summary>
internal static class XDataReader
{
    private const int DeepestList = 32;

    internal static DxfSequence<DxfXData> Read(EntityReader reader, Record record)
    {
        if (record.XGroups.Count == 0)
            return [];
        var all = new List<DxfXData>();
        for (var at = 0; at < record.XGroups.Count;)
        {
            var group = record.XGroups[at++];
            if (group.Code != 1001)
                continue;
            var values = Values(reader, record, ref at);
            var name = StringCoding.Decode(group.Value).Trim();
            if (name.Length > 0)
                all.Add(new(reader.Tables.AppId(name, record), values));
        }
        return [.. all];
    }

    /// <summary>Reads to the end of the application's data. Lists deeper than any program writes are not opened.</summary>
    private static DxfSequence<DxfXValue> Values(EntityReader reader, Record record, ref int at)
    {
        var open = new Stack<List<DxfXValue>>();
        open.Push([]);
        for (; at < record.XGroups.Count && record.XGroups[at].Code != 1001; at++)
        {
            var group = record.XGroups[at];
            var opens = group.Code == 1002 && group.Value.Trim() == "{";
            if (opens && open.Count <= DeepestList)
                open.Push([]);
            else if (group.Code == 1002 && !opens)
                Close(open);
            else if (Value(reader, record, group, at) is { } value)
                open.Peek().Add(value);
        }
        while (open.Count > 1)
            Close(open);
        return [.. open.Pop()];
    }

    private static void Close(Stack<List<DxfXValue>> open)
    {
        if (open.Count < 2)
            return;
        var list = new DxfXValue.List([.. open.Pop()]);
        open.Peek().Add(list);
    }

    private static DxfXValue? Value(EntityReader reader, Record record, Group group, int at)
    {
        switch (group.Code)
        {
            case 1000:
                return new DxfXValue.Text(StringCoding.Decode(group.Value));
            case 1003:
                return new DxfXValue.Layer(reader.Tables.LayerNamed(StringCoding.Decode(group.Value).Trim(), record));
            case 1040 or 1041 or 1042:
                return new DxfXValue.Real(record.ToReal(group));
            case 1070 or 1071:
                return new DxfXValue.Integer(record.ToInteger(group));
            case 1010 or 1011 or 1012 or 1013:
                var y = record.XGroups.Skip(at + 1).FirstOrDefault(g => g.Code == group.Code + 10);
                return new DxfXValue.Point(new(record.ToReal(group), y.Code == 0 ? 0 : record.ToReal(y)));
            case 1004 or 1005:
                reader.Log.Warn(record, $"{record.Kind}: handles and binary values of extended data are left out");
                return null;
            default:
                return null;
        }
    }
}
