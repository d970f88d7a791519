using System.Collections.Concurrent;

namespace PlankFit.Nesting.Rows;

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
        int[] places =
        [
            .. Enumerable.Range(0, row.Items.Length).Where(i => left.Remove(row.Items[i])),
        ];
        Row nearer = RowOrder.Placed(
            ends,
            [.. places.Select(i => row.Items[i])],
            [.. places.Select(i => row.Poses[i])]
        );
        // Where an end that was turned to what is taken out would want its whole length again, all stays where it lies, and as it is.
        return nearer.LengthMm <= row.LengthMm || row.Turned.IsEmpty
            ? nearer
            : nearer with
            {
                FromMm = [.. places.Select(i => row.FromMm[i])],
                Turned = [.. places.Select(i => row.Turned[i])],
                LengthMm = row.LengthMm,
            };
    }
}
