namespace SheetGen.Dxf;

/// <summary>Makes a document of a raw file.</summary>
internal sealed class DocumentBuilder
{
    private readonly RawFile _raw;
    private readonly ReadLog _log;
    private readonly DxfDocument _document = DxfDocument.Bare();
    private readonly TableReader _tables;
    private readonly EntityReader _entities;

    private DocumentBuilder(RawFile raw, ReadLog log)
    {
        (_raw, _log) = (raw, log);
        _tables = new(raw, _document, log);
        _entities = new(_tables, log);
    }

    internal static DxfDocument Build(RawFile raw, ReadLog log)
    {
        var builder = new DocumentBuilder(raw, log);
        builder.Build();
        return builder._document;
    }

    private void Build()
    {
        _tables.Read();
        _document.Header = HeaderReader.Read(_raw.Header);

        var blocks = BlockReader.Split(_raw.Blocks);
        var spaces = new Dictionary<string, List<Record>>(StringComparer.OrdinalIgnoreCase);
        foreach (var (head, content) in blocks)
        {
            var name = head.Name(2);
            if (IsSpace(name))
                spaces.TryAdd(name.Replace('$', '*'), content);
            else if (!IsDimensionPicture(name) && name.Length > 0 && !_document.Blocks.Contains(name))
                _document.Blocks.Add(new(name) { BasePoint = head.Point(10).Xy });
            if ((head.Integer(70) & 4) != 0)
                _log.Warn(head.Line, $"block {name} is an external reference: its content is not in the file");
        }

        var read = new List<(List<DxfEntity> Target, SpaceContent Content)>();
        var filled = new HashSet<DxfBlock>();
        foreach (var (head, content) in blocks)
        {
            if (_document.Blocks.TryGet(head.Name(2), out var block) && filled.Add(block))
                read.Add((block.Entities, _entities.Read(content, _document.Blocks)));
        }
        Model(spaces, read);
        new LayoutReader(_raw, _tables, _log).Read(_document, spaces, s => _entities.Read(s, _document.Blocks), read);

        _tables.AddUsedNames();
        new ReadCleanup(_document, _log).Keep(read);
    }

    private void Model(Dictionary<string, List<Record>> spaces, List<(List<DxfEntity> Target, SpaceContent Content)> read)
    {
        var model = spaces.GetValueOrDefault("*Model_Space", []);
        var content = _entities.Read([.. model, .. LayoutReader.Part(_raw.Entities, paper: false)], _document.Blocks);
        foreach (var viewport in content.Viewports)
            _log.Warn(viewport.Record, "VIEWPORT in model space is left out");
        read.Add((_document.Model, content));
    }

    private static bool IsSpace(string name)
    {
        var plain = name.Replace('$', '*');
        return plain.StartsWith("*Model_Space", StringComparison.OrdinalIgnoreCase)
            || plain.StartsWith("*Paper_Space", StringComparison.OrdinalIgnoreCase);
    }

    private static bool IsDimensionPicture(string name) => name.StartsWith("*D", StringComparison.OrdinalIgnoreCase);
}
