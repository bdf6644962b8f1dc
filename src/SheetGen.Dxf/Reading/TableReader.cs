namespace SheetGen.Dxf;

/// <summary>Reads the tables, and keeps track of names that entities use.</summary>
internal sealed class TableReader(RawFile raw, DxfDocument document, ReadLog log)
{
    private readonly Dictionary<string, string> _nameOfHandle = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _textStyles = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _dimStyles = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _appIds = new(StringComparer.OrdinalIgnoreCase);

    internal void Read()
    {
        foreach (var record in raw.Tables.Where(r => r.Kind is not ("TABLE" or "ENDTAB")))
        {
            if (record.Handle is { } handle)
                _nameOfHandle.TryAdd(record.Kind + handle, record.Name(2));
        }
        foreach (var record in raw.Tables)
        {
            var name = record.Name(2);
            if (name.Length == 0)
                continue;
            switch (record.Kind)
            {
                case "LTYPE" when !DxfLinetype.IsBuiltIn(name): Add(document.Linetypes, Linetype(record, name)); break;
                case "LAYER": Add(document.Layers, Layer(record, name)); break;
                case "STYLE": Add(document.TextStyles, TextStyle(record, name)); break;
                case "DIMSTYLE": Add(document.DimStyles, DimStyle(record, name)); break;
                case "APPID": Add(document.AppIds, new DxfAppId(name)); break;
            }
        }
    }

    /// <summary>The name of the table entry of a handle; null if there is none of that kind.</summary>
    internal string? NameOf(string kind, string handle) => _nameOfHandle.GetValueOrDefault(kind + handle.Trim().ToUpperInvariant());

    internal string Layer(Record record) => Use(_layers, record.Name(8, "0"), record);

    internal string LayerNamed(string name, Record record) => Use(_layers, name, record);

    internal string TextStyle(Record record) => Use(_textStyles, record.Name(7, "Standard"), record);

    internal string DimStyle(Record record) => Use(_dimStyles, record.Name(3, "Standard"), record);

    internal string AppId(string name, Record record) => Use(_appIds, name, record);

    /// <summary>Adds what is used but not in the tables, and what every drawing has.</summary>
    internal void AddUsedNames()
    {
        document.AddStandardEntries();
        foreach (var layer in document.Layers.ToList())
        {
            if (DxfLinetype.IsBuiltIn(layer.Linetype) || document.Linetypes.Contains(layer.Linetype))
                continue;
            log.Warn(0, $"layer {layer.Name}: linetype {layer.Linetype} is not defined; Continuous is taken");
            document.Layers.Set(layer with { Linetype = DxfLinetype.Continuous });
        }
        foreach (var style in document.DimStyles)
            _textStyles.TryAdd(style.TextStyle, 0);
        var header = document.Header;
        _layers.TryAdd(header.Layer, 0);
        _textStyles.TryAdd(header.TextStyle, 0);
        _dimStyles.TryAdd(header.DimStyle, 0);
        AddMissing(DxfProblemKind.Definition, "layer", _layers, document.Layers, n => new(n));
        AddMissing(DxfProblemKind.Definition, "text style", _textStyles, document.TextStyles, n => new(n, "txt"));
        AddMissing(DxfProblemKind.DimensionStyle, "dimension style", _dimStyles, document.DimStyles, n => new(n));
        AddMissing(DxfProblemKind.Definition, "application", _appIds, document.AppIds, n => new(n));
    }

    private static string Use(Dictionary<string, int> used, string name, Record record)
    {
        used.TryAdd(name, record.Line);
        return name;
    }

    private static void Add<T>(DxfTable<T> table, T item)
        where T : class, IDxfNamed
    {
        if (!table.Contains(item.Name))
            table.Add(item);
    }

    private void AddMissing<T>(DxfProblemKind kind, string what, Dictionary<string, int> used, DxfTable<T> table, Func<string, T> make)
        where T : class, IDxfNamed
    {
        foreach (var (name, line) in used.Where(u => !table.Contains(u.Key)))
        {
            log.Warn(line, $"{what} {name} is used but not defined; it is added", kind);
            table.Add(make(name));
        }
    }

    private DxfLinetype Linetype(Record record, string name)
    {
        if (record.All(74).Any(g => record.ToInteger(g) != 0))
            log.Warn(record, $"linetype {name}: shapes or text in it are left out");
        var pattern = record.All(49).Select(record.ToReal).ToList();
        return new(name, record.Text(3), pattern.Count == 1 ? [] : [.. pattern]);
    }

    private static DxfLayer Layer(Record record, string name)
    {
        var color = record.Integer(62, 7);
        var weight = record.Integer(370, DxfLayer.DefaultLineWeight);
        var flags = record.Integer(70);
        return new(name, color is 0 or < -255 or > 255 ? 7 : Math.Abs(color))
        {
            Linetype = record.Name(6, DxfLinetype.Continuous),
            LineWeight = DxfLayer.LineWeights.Contains(weight) ? weight : DxfLayer.DefaultLineWeight,
            Plot = record.Integer(290, 1) != 0,
            Off = color < 0,
            Frozen = (flags & 1) != 0,
            Locked = (flags & 4) != 0,
        };
    }

    private static DxfTextStyle TextStyle(Record record, string name)
    {
        var width = record.Real(41, 1);
        return new(name, record.Name(3, "txt"))
        {
            WidthFactor = width > 0 ? width : 1,
            ObliqueAngle = Math.Clamp(Math.IEEERemainder(record.Real(50), 360), -85, 85),
        };
    }

    private DxfDimStyle DimStyle(Record record, string name)
    {
        double Size(int code, double otherwise) => Math.Max(record.Real(code, otherwise), 0);
        double Positive(int code, double otherwise) => record.Real(code, otherwise) is > 0 and var value ? value : otherwise;

        var style = new DxfDimStyle(name);
        var format = (DxfLinearFormat)record.Integer(277, 2);
        return style with
        {
            Affix = record.Text(3),
            Scale = Positive(40, 1),
            ArrowSize = Size(41, style.ArrowSize),
            ExtensionOffset = Size(42, style.ExtensionOffset),
            ExtensionBeyond = Size(44, style.ExtensionBeyond),
            TextHeight = Positive(140, style.TextHeight),
            TickSize = Size(142, 0),
            MeasureFactor = Positive(144, 1),
            TextGap = Size(147, style.TextGap),
            TextAbove = record.Integer(77) != 0,
            TrimZeros = format == DxfLinearFormat.Decimal && (record.Integer(78) & 8) != 0,
            Precision = Math.Clamp(record.Integer(271, style.Precision), 0, 8),
            Format = Enum.IsDefined(format) ? format : DxfLinearFormat.Decimal,
            TextStyle = NameOf("STYLE", record.Raw(340) ?? "") ?? "Standard",
        };
    }
}
