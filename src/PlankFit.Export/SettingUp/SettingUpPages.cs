using System.Collections.Immutable;
using PlankFit.Export.Framing;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Framing;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.SettingUp;

/// <summary>Setting up on paper: how to read it, then deductions, bevels, the rabbet, stringers and the corner at the chine.</summary>
public static class SettingUpPages
{
    private const string Sheet = "Setting up";

    public static ImmutableArray<Drawing> Of(Job job, SettingUpPlan plan)
    {
        var pages = new List<SheetPage> { SettingUpReading.Page(job, plan) };
        if (!plan.Sections.IsEmpty)
        {
            pages.AddRange(Deductions(job, plan).Pages(job));
            pages.AddRange(Bevels(job, plan).Pages(job));
        }

        if (!plan.Rabbet.IsEmpty)
        {
            pages.AddRange(Rabbet(job, plan).Pages(job));
        }

        foreach (
            IGrouping<string, StringerPlace> stringer in plan.Stringers.GroupBy(s => s.Stringer)
        )
        {
            pages.AddRange(Stringer(job, plan, stringer.Key, [.. stringer]).Pages(job));
        }

        if (!plan.Chine.IsEmpty)
        {
            pages.AddRange(ChineLists.Trims(job, plan).Pages(job));
            pages.AddRange(ChineLists.Edge(job, plan).Pages(job));
        }

        return SheetPage.Numbered(job, pages);
    }

    internal static TitleBlock Block(string of) =>
        new(Sheet, of, "figures", null, Cautions.SettingUp);

    private static ListSheet Deductions(Job job, SettingUpPlan plan)
    {
        string Mm(double mm) => LengthText.PaperNumber(mm, job.Units);
        string[] raked =
        [
            .. plan
                .Sections.Where(s => Math.Abs(s.RakeDegrees) > 0.01)
                .Select(SettingUpWords.Named),
        ];
        return new(
            Block("moulds and frames: deductions, starboard (port is its twin)"),
            [
                $"Lengths in {SheetWords.Unit(job.Units)}. Deduction: from the table's section in to the mould line, square to the section, in the plane of the frame: planking{(plan.Spec.RibbandMm > 0 ? " and ribbands" : "")} measured square to the skin, so it is the more where the hull runs up or in. Half-breadths are from the middle line, heights from the base line.",
                "Mould at keel: where the mould line meets the keel's side. Mould at chine: its corner with the topside's mould line, or, where no topside is named, square under the table's chine."
                    + (
                        plan.Sections.Any(s => s.IsStretch)
                            ? " Of a frame that goes only part of the way: at its inner end, halfway along it and at its outer end."
                            : ""
                    ),
                .. raked.Length == 0
                    ? ImmutableArray<string>.Empty
                    : [$"Raked, with heights measured up the rake: {string.Join("; ", raked)}."],
            ],
            [
                new("section", 15, false),
                new("face on its line", 10, false),
                new("deduct at keel", 11),
                new("half way", 11),
                new("at chine", 11),
                new("mould at keel: half-breadth", 13),
                new("height", 12),
                new("mould at chine: half-breadth", 13),
                new("height", 12),
            ],
            [
                .. plan.Sections.Select(s =>
                    ImmutableArray.Create(
                        SettingUpWords.Named(s),
                        SettingUpWords.Face(s.Face),
                        Mm(s.Places[0].DeductionMm),
                        Mm(s.Places[2].DeductionMm),
                        Mm(s.Places[4].DeductionMm),
                        Mm(s.KeelEnd.X),
                        Mm(s.KeelEnd.Y),
                        Mm(s.ChineEnd.X),
                        Mm(s.ChineEnd.Y)
                    )
                ),
            ]
        );
    }

    private static ListSheet Bevels(Job job, SettingUpPlan plan)
    {
        string Fall(FramePlace p) => LengthText.PaperNumber(Math.Abs(p.FallMm), job.Units);
        return new(
            Block("moulds and frames: bevels of their edges"),
            [
                "Bevel: off square at the face that stands on the line. UNDER (shut): wood comes off from the mould line towards the other face. STANDING (open): wood is wanting beyond it; saw the frame full by the fall. Fall: from the mould line to the edge at the other face, square to the line.",
            ],
            [
                new("section", 15, false),
                new("face on its line", 10, false),
                new("thickness", 10),
                new("at keel", 14),
                new("fall", 9),
                new("half way", 14),
                new("fall", 9),
                new("at chine", 14),
                new("fall", 9),
            ],
            [
                .. plan.Sections.Select(s =>
                    ImmutableArray.Create(
                        SettingUpWords.Named(s),
                        SettingUpWords.Face(s.Face),
                        LengthText.PaperNumber(s.ThicknessMm, job.Units),
                        SettingUpWords.Bevel(s.Places[0].BevelDegrees),
                        Fall(s.Places[0]),
                        SettingUpWords.Bevel(s.Places[2].BevelDegrees),
                        Fall(s.Places[2]),
                        SettingUpWords.Bevel(s.Places[4].BevelDegrees),
                        Fall(s.Places[4])
                    )
                ),
            ]
        );
    }

    private static ListSheet Rabbet(Job job, SettingUpPlan plan)
    {
        string Mm(double mm) => LengthText.PaperNumber(mm, job.Units);
        bool bearding = plan.Rabbet.Any(r => r.Bearding is not null);
        ImmutableArray<string> Row(RabbetPlace r)
        {
            ImmutableArray<string> row =
            [
                r.Section,
                Mm(r.RabbetLine.X),
                Mm(r.RabbetLine.Y),
                Mm(r.Middle.X),
                Mm(r.Middle.Y),
                Mm(r.DepthMm),
            ];
            return !bearding
                ? row
                :
                [
                    .. row,
                    r.Bearding is { } b ? Mm(b.X) : "none",
                    r.Bearding is { } c ? Mm(c.Y) : "none",
                    r.LandingMm is { } l ? Mm(l) : "none",
                    AngleText.ForPaper(r.LandingDegrees),
                ];
        }

        return new(
            Block("the keel's rabbet"),
            [
                $"Lengths in {SheetWords.Unit(job.Units)}. Rabbet line: where the planking's outer face meets the keel's side. Middle: where its inner face meets it, the bottom of the rabbet."
                    + (
                        bearding
                            ? " Bearding line: where its inner face comes out of the keel's side, or of the backbone inside it; from middle to bearding is the landing, planed to the slope given."
                            : " No bearding line: planks end on the keel's side, and no backbone wider than the keel is named."
                    ),
            ],
            [
                new("section", 10, false),
                new("rabbet line: half-breadth", 12),
                new("height", 11),
                new("middle: half-breadth", 12),
                new("height", 11),
                new("depth", 9),
                .. bearding
                    ? new ListColumn[]
                    {
                        new("bearding: half-breadth", 12),
                        new("height", 11),
                        new("landing", 9),
                        new("slope", 8),
                    }
                    : [],
            ],
            [.. plan.Rabbet.Select(Row)]
        );
    }

    private static ListSheet Stringer(
        Job job,
        SettingUpPlan plan,
        string name,
        ImmutableArray<StringerPlace> rows
    )
    {
        string Mm(double mm) => LengthText.PaperNumber(mm, job.Units);
        FramingSpec thing = job.Framing.First(b => b.Name == name);
        double width = thing.WidthMm;
        return new(
            Block(
                name.Contains("stringer", StringComparison.OrdinalIgnoreCase)
                    ? FramingWords.Sided(thing)
                    : $"stringer {FramingWords.Sided(thing)}"
            ),
            [
                $"Centre of its outer face, on the planking's inner face. Bevel: of the outer face off square to plumb sides; standing (open) at the higher edge, under (shut) at the lower; with sides square to the plank it is the stringer's lean instead. Fall: over its width of {LengthText.ForPaper(width, job.Units)}.",
                "Across the frame: how far off square its notch runs, measured along the planking.",
            ],
            [
                new("section", 14, false),
                new("half-breadth", 13),
                new("height", 13),
                new("bevel", 9),
                new("higher edge", 14, false),
                new("fall", 10),
                new("across the frame", 26, false),
            ],
            [
                .. rows.Select(r =>
                    ImmutableArray.Create(
                        r.Section,
                        Mm(r.Centre.X),
                        Mm(r.Centre.Y),
                        AngleText.ForPaper(Math.Abs(r.BevelDegrees)),
                        r.BevelDegrees >= 0 ? "outboard" : "inboard",
                        Mm(Math.Abs(r.FallMm)),
                        Across(r.CrossDegrees)
                    )
                ),
            ]
        );
    }

    private static string Across(double degrees) =>
        Math.Abs(degrees) < 0.25
            ? "square"
            : $"{AngleText.ForPaper(Math.Abs(degrees))}, {(degrees > 0 ? "outboard" : "inboard")} going aft";
}
