using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Jobs;

/// <summary>The stock and the kind of joint as far as a table says: [joints] may leave to each [[joints.layer]] what it does not say itself.</summary>
internal sealed record StockDraft(
    double? LongestMm,
    double? ShortestMm,
    JointKind? Kind,
    double? Ratio,
    ButtCut? Cut,
    ImmutableArray<string>? On,
    double? BlockMm,
    double? BearingMm,
    double? GridMm,
    ImmutableArray<double> StockLengthsMm
)
{
    public static readonly StockDraft Nothing = new(
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        []
    );

    private static readonly (string, JointKind)[] Kinds =
    [
        ("butt", JointKind.Butt),
        ("scarf", JointKind.Scarf),
    ];

    private static readonly (string, ButtCut)[] Cuts =
    [
        ("square", ButtCut.Square),
        ("along the backing", ButtCut.AlongBacking),
    ];

    /// <summary>What the table says, and where it says nothing what holds for all layers.</summary>
    public static StockDraft Read(TableReader table, LengthUnit units, StockDraft usual)
    {
        ImmutableArray<double> lengths = LengthList.Of(table, "stock-lengths", units);
        double? longest = table.Length("longest", units) ?? (lengths.IsEmpty ? null : lengths[^1]);
        return new(
            longest ?? usual.LongestMm,
            table.Length("shortest", units) ?? usual.ShortestMm,
            table.Choice("kind", Kinds, required: false) ?? usual.Kind,
            table.Number("ratio", JointStockBinder.RatioAccepted) ?? usual.Ratio,
            table.Choice("cut", Cuts, required: false) ?? usual.Cut,
            table.Find("on") is null ? usual.On : [.. table.Texts("on").Select(t => t.Text)],
            table.Length("block", units) ?? usual.BlockMm,
            table.Length("bearing", units) ?? usual.BearingMm,
            table.Length("grid", units) ?? usual.GridMm,
            // A layer's own longest piece is of stock of its own.
            lengths.IsEmpty && longest is null
                ? usual.StockLengthsMm
                : lengths
        );
    }
}
