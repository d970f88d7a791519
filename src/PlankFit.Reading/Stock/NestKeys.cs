using PlankFit.Planking.Stock;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Stock;

/// <summary>[nest]: the stock on hand, what may be bought, and how planks are sawn out of it.</summary>
public static class NestKeys
{
    private static readonly NestSpec Usual = NestSpec.Usual;

    public static readonly FilesKey Stock = new(
        "stock",
        "\"stock.csv\"",
        "The file of boards on hand, or a list of files; stock or buy must be there."
    )
    {
        Most = Bounds.Files,
    };

    public static readonly FilesKey Buy = new(
        "buy",
        "\"yard.csv\"",
        "The file of what a yard sells, or a list of files; as little as can be is bought."
    )
    {
        Most = Bounds.Files,
    };

    public static readonly LengthKey Kerf = Size(
        "kerf",
        "3",
        "What the saw takes.",
        Usual.KerfMm
    ) with
    {
        Likely = new(null, 10, "more than {most} is a wide cut for any saw"),
    };

    public static readonly LengthKey Edge = Size(
        "edge",
        "2",
        "Taken off each long edge of a board before anything lies in it.",
        Usual.EdgeMm
    );

    public static readonly LengthKey End = Size(
        "end",
        "5",
        "Squared off each end of a board, besides what its row calls unusable.",
        Usual.EndMm
    );

    public static readonly LengthKey Plane = Size(
        "plane",
        "0.5",
        "How much thicker than its layer a board must be.",
        Usual.PlaneMm
    );

    public static readonly LengthKey Thicker = Size(
        "thicker",
        "1",
        "How much thicker than that it may be.",
        Usual.ThickerMm
    );

    public static readonly LengthKey Proud = Size(
        "over-width",
        "0.2",
        "How much wider than its board a piece may be.",
        Usual.ProudMm
    ) with
    {
        Likely = new(
            null,
            2,
            "pieces may be so much wider than their boards: the seam will want it"
        ),
    };

    public static readonly LengthKey LeastOffcut = Size(
        "least-offcut",
        "300",
        "The shortest piece left over that is kept.",
        Usual.LeastOffcutMm
    );

    public static readonly LengthKey LeastOffcutWidth = Size(
        "least-offcut-width",
        "40",
        "The narrowest piece left over that is kept.",
        Usual.LeastOffcutWidthMm
    );

    public static readonly LengthKey LeastOverhang = Size(
        "least-overhang",
        "10",
        "An end left long by more may come down to this at a corner, to be sawn at its neighbour's angle.",
        null
    ) with
    {
        Otherwise = "all that it is left long by stays",
        Source = null,
    };

    public static readonly YesNoKey TurnEndForEnd = new(
        "turn-end-for-end",
        Usual.TurnEndForEnd,
        "Whether pieces may lie turned end for end."
    );

    public static readonly YesNoKey TurnFaceForFace = new(
        "turn-face-for-face",
        Usual.TurnFaceForFace,
        "Whether pieces may lie with their outer face down; one with a bevelled end never does."
    );

    public static readonly YesNoKey PairsTogether = new(
        "pairs-together",
        Usual.PairsTogether,
        "Whether a plank and its twin of the other side must come from the same board."
    );

    public static readonly TextsKey Grades = new(
        "grades",
        "[\"clear\", \"sound\"]",
        "The grades of boards, best first."
    )
    {
        Otherwise = "boards are not told apart by grade",
    };

    public static readonly TextKey Masters = new(
        "masters",
        "\"clear\"",
        "The least grade for master planks, one of the grades."
    )
    {
        Otherwise = "any",
    };

    /// <summary>What a layer's key in least is; its name is the layer's.</summary>
    public static readonly TextKey LeastOfLayer = new(
        "outer",
        "\"sound\"",
        "The least grade for the planks of the layer of that name, here \"outer\"."
    );

    public static readonly TableKey Least = new(
        "least",
        "{ outer = \"sound\" }",
        "The least grade for the planks of a layer: its keys are the layers' names.",
        new(LeastOfLayer)
    )
    {
        Otherwise = "any",
    };

    public static readonly ChoiceKey<NestObjective> Objective = new(
        "objective",
        [("area", NestObjective.Area), ("cost", NestObjective.Cost)],
        "What is made least of the boards to buy or, without a yard, of all: their area or their price."
    )
    {
        DefaultChoice = Usual.Objective,
    };

    public static readonly NumberKey Seconds = new(
        "time",
        "10",
        "seconds",
        "How long to look for a better plan."
    )
    {
        Limits = Limits.FromTo(0, 86400),
        AcceptedWords = "accepted: seconds, from {least} to {most}",
        DefaultValue = Usual.Seconds,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey Rounds = Whole(
        "rounds",
        "50",
        "Instead of a time: a fixed effort, with which the same job gives the same plan.",
        1_000_000
    ) with
    {
        Otherwise = "the time holds",
    };

    public static readonly NumberKey Seed = Whole(
        "seed",
        "2",
        "Another number tries other plans.",
        int.MaxValue
    ) with
    {
        DefaultValue = Usual.Seed,
        Source = KeySources.Proposal,
    };

    public static readonly JobTable Table = new(
        Stock,
        Buy,
        Kerf,
        Edge,
        End,
        Plane,
        Thicker,
        Proud,
        LeastOverhang,
        LeastOffcut,
        LeastOffcutWidth,
        TurnEndForEnd,
        TurnFaceForFace,
        PairsTogether,
        Grades,
        Masters,
        Least,
        Objective,
        Seconds,
        Rounds,
        Seed
    );

    /// <summary>The keys of least where the layers have these names.</summary>
    internal static JobTable LeastOf(IEnumerable<string> layers) =>
        new([.. layers.Select(name => (JobKey)(LeastOfLayer with { Name = name }))]);

    private static LengthKey Size(string name, string example, string what, double? usualMm) =>
        new(name, example, what)
        {
            Limits = Limits.NotNegative,
            Beyond = "must not be less than {least}",
            DefaultMm = usualMm,
            Source = KeySources.Proposal,
        };

    private static NumberKey Whole(string name, string example, string what, int most) =>
        new(name, example, "whole number", what)
        {
            Whole = true,
            Limits = Limits.FromTo(0, most),
            AcceptedWords = "accepted: a whole number from {least} to {most}",
        };
}
