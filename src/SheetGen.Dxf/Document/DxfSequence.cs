using System.Collections;
using System.Runtime.CompilerServices;

namespace SheetGen.Dxf;

/// <summary>An unchanging list that is equal to another when all items are, so that records holding lists compare by value.</summary>
/// <remarks>Made with a collection expression (<c>[a, b]</c>, <c>[.. points]</c>).</remarks>
[CollectionBuilder(typeof(DxfSequence), nameof(DxfSequence.Create))]
public sealed class DxfSequence<T> : IReadOnlyList<T>, IEquatable<DxfSequence<T>>
{
    private readonly T[] _items;

    internal DxfSequence(T[] items) => _items = items;

    /// <inheritdoc/>
    public int Count => _items.Length;

    /// <inheritdoc/>
    public T this[int index] => _items[index];

    /// <inheritdoc/>
    public bool Equals(DxfSequence<T>? other) => other is not null && _items.AsSpan().SequenceEqual(other._items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DxfSequence<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in _items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => _items.GetEnumerator();

    /// <inheritdoc/>
    public override string ToString() => "[" + string.Join(", ", _items) + "]";
}

/// <summary>Makes <see cref="DxfSequence{T}"/>; used by the compiler for collection expressions.</summary>
public static class DxfSequence
{
    /// <summary>Copies the items.</summary>
    public static DxfSequence<T> Create<T>(ReadOnlySpan<T> items) => new(items.ToArray());
}
