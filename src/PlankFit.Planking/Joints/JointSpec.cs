using System.Collections.Immutable;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Joints;

/// <summary>How planks longer than the stock are pieced.</summary>
/// <param name="Usual">For every layer that is not named by itself; null where only the named ones are pieced.</param>
/// <param name="ByLayer">For layers named by themselves.</param>
/// <param name="Rules">The job's own rules; each stands in the place of the one that comes with the program for the same thing.</param>
public sealed record JointSpec(
    JointStock? Usual,
    ImmutableDictionary<string, JointStock> ByLayer,
    ImmutableArray<JointRule> Rules
)
{
    /// <summary>The stock of a layer; null where its planks are not pieced.</summary>
    public JointStock? Of(string layer) => ByLayer.GetValueOrDefault(layer) ?? Usual;

    /// <summary>What the rules that come with the program are to be for; null where that goes by the number of layers.</summary>
    public Skin? Skin { get; init; }

    /// <summary>Rules of nought: the job asks for nothing where the program has a rule.</summary>
    public IEnumerable<JointRule> SwitchedOff => Rules.Where(r => r.IsNone);

    /// <param name="layers">How many layers of planks there are: more than one are taken to be glued on each other.</param>
    public Skin SkinOf(int layers) =>
        Skin ?? (layers > 1 ? Joints.Skin.GluedLayers : Joints.Skin.OnFrames);

    /// <summary>The rules for a layer: those that come with the program and the job's own in their places; a rule of nought is none.</summary>
    public ImmutableArray<JointRule> RulesFor(JointStock stock, PlankLayerSpec layer, int layers) =>
        [
            .. (
                SkinOf(layers) == Joints.Skin.OnFrames
                    ? JointRules.OnFrames(stock.Kind)
                    : JointRules.Glued(layer.WidthMm, stock.JointMm(layer.ThicknessMm))
            )
                .Where(r => Rules.All(own => own.What != r.What))
                .Concat(Rules)
                .Where(r => !r.IsNone)
                .OrderBy(r => r.What),
        ];
}

/// <summary>What two pieces of a plank are joined by.</summary>
public enum JointKind
{
    /// <summary>Sawn ends against each other over a backing.</summary>
    Butt,

    /// <summary>Long tapers glued on each other.</summary>
    Scarf,
}

/// <summary>Which way a butt is sawn.</summary>
public enum ButtCut
{
    /// <summary>Square to the plank's own line.</summary>
    Square,

    /// <summary>Along the middle of what backs it, so that both pieces bear alike on timber narrower than a diagonal plank is wide.</summary>
    AlongBacking,
}

/// <summary>The stock of a layer and how its pieces are joined.</summary>
/// <param name="LongestMm">The longest usable piece, overall.</param>
/// <param name="ShortestMm">The shortest piece that is still laid, overall.</param>
/// <param name="ScarfRatio">Length of a scarf over the thickness.</param>
/// <param name="On">What a butt may lie on: "stringer", "frame", "floor", "solid", "block", "layer below", or the name of something behind.</param>
/// <param name="BlockMm">Length along the plank of a block glued behind a butt; null where blocks are not used.</param>
/// <param name="BearingMm">The least breadth of backing that each of two butted pieces must have, square to the backing.</param>
/// <param name="GridMm">The steps in which places for a joint are tried.</param>
/// <param name="StockLengthsMm">Lengths in which the stock comes, least first; empty where pieces are wanted as even as may be.</param>
public sealed record JointStock(
    double LongestMm,
    double ShortestMm,
    JointKind Kind,
    double ScarfRatio,
    ButtCut Cut,
    ImmutableArray<string> On,
    double? BlockMm,
    double BearingMm,
    double GridMm,
    ImmutableArray<double> StockLengthsMm
)
{
    /// <summary>Length of a scarf's overlap in planks of that thickness, mm; 0 for butts.</summary>
    public double JointMm(double thicknessMm) =>
        Kind == JointKind.Scarf ? ScarfRatio * thicknessMm : 0;

    /// <summary>The word for a glued block in <see cref="On"/>.</summary>
    public const string Block = "block";

    /// <summary>The word for the layer below, glued to, in <see cref="On"/>.</summary>
    public const string LayerBelow = "layer below";

    /// <summary>Kinds of things behind that carry a butt where a job does not say which; "open" carries none.</summary>
    public static readonly ImmutableArray<string> Carrying =
    [
        "stringer",
        "frame",
        "floor",
        "solid",
    ];
}
