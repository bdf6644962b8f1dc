using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace SheetGen.Dxf;

/// <summary>Named things in the order in which they were added; names are compared without regard to case.</summary>
public sealed class DxfTable<T> : IReadOnlyCollection<T>
    where T : class, IDxfNamed
{
    private readonly List<T> _items = [];
    private readonly Dictionary<string, int> _index = new(StringComparer.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public int Count => _items.Count;

    /// <summary>The item of that name.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public T this[string name] => _items[_index[name]];

    /// <summary>Adds an item, or replaces the one of the same name where it stands.</summary>
    public void Set(T item)
    {
        if (_index.TryGetValue(item.Name, out var at))
        {
            _items[at] = item;
            return;
        }
        _index.Add(item.Name, _items.Count);
        _items.Add(item);
    }

    /// <summary>Adds an item.</summary>
    /// <exception cref="ArgumentException">The name is taken.</exception>
    public void Add(T item)
    {
        if (Contains(item.Name))
            throw new ArgumentException($"The name '{item.Name}' is taken.", nameof(item));
        Set(item);
    }

    /// <summary>Whether an item of that name is there.</summary>
    public bool Contains(string name) => _index.ContainsKey(name);

    /// <summary>Finds the item of that name.</summary>
    public bool TryGet(string name, [NotNullWhen(true)] out T? item)
    {
        item = _index.TryGetValue(name, out var at) ? _items[at] : null;
        return item is not null;
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => _items.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
