using System.Collections.Immutable;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>The keys for what is done with ends at the edges of one panel.</summary>
internal sealed record EdgeKeys(
    TableKey Lower,
    TableKey Upper,
    TableKey Transom,
    TableKey Stem,
    TablesKey Zone
)
{
    public JobTable Table => new(Lower, Upper, Transom, Stem, Zone);

    /// <summary>Those of a stretch of the hull.</summary>
    public ImmutableArray<TableKey> OfZone => InZone(Lower, Upper, Transom, Stem);

    public static JobTable ZoneTable(params TableKey[] edges) =>
        new([EndKeys.From, EndKeys.To, .. InZone(edges)]);

    private static ImmutableArray<TableKey> InZone(params TableKey[] edges) =>
        [.. edges.Select(e => e with { Otherwise = "as outside the stretch" })];
}
