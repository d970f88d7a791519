using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Rows laid out once and remembered by what lies in them.</summary>
internal sealed class RowBook(EndTable ends)
{
    private readonly ConcurrentDictionary<string, Row> rows = [];

    public Row Of(IReadOnlyList<int> items) =>
        rows.GetOrAdd(Row.KeyOf(items), _ => RowOrder.Best(ends, items));

    /// <summary>A row with one thing more: the shortest, or where it is long the shortest without changing it otherwise.</summary>
    public Row With(Row row, int item) =>
        row.Items.Length < RowOrder.Weighed
            ? Of([.. row.Items, item])
            : RowOrder.With(ends, row, item);

    /// <summary>What is kept of a row, in the order and poses that it has there: never longer than the row.</summary>
    public Row InOrder(Row row, IEnumerable<int> kept)
    {
        var left = kept.ToList();
        var items = ImmutableArray.CreateBuilder<int>();
        var poses = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < row.Items.Length; i++)
        {
            if (left.Remove(row.Items[i]))
            {
                items.Add(row.Items[i]);
                poses.Add(row.Poses[i]);
            }
        }

        return RowOrder.Placed(ends, items.ToImmutable(), poses.ToImmutable());
    }
}
