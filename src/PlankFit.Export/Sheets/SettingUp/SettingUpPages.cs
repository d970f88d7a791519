using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>Setting up on paper: frames, bevels, rabbet, the corner at the chine.</summary>
public static class SettingUpPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, SettingUpPlan setting)
    {
        Job job = plan.Job;
        SettingUpSpec spec = job.SettingUp!;
        var pages = new List<SheetPage>();
        pages.AddRange(Frames(job, spec, setting).Pages(job));
        if (!setting.Runs.IsEmpty)
        {
            pages.AddRange(Runs(job, setting).Pages(job));
        }

        pages.AddRange(Rabbet(job, setting).Pages(job));
        if (!setting.Corners.IsEmpty)
        {
            pages.Add(ChineSketch.Page(job, spec, setting));
            pages.AddRange(Corners(job, spec, setting).Pages(job));
        }

        return SheetPage.Numbered(job, pages);
    }

    internal static TitleBlock Block(string of) =>
        new("Setting up", of, "figures", null, Cautions.SettingUp);

    private static ListSheet Frames(Job job, SettingUpSpec spec, SettingUpPlan setting)
    {
        string face = spec.Face == FrameFace.Forward ? "forward" : "after";
        return new(
            Block("frames and moulds"),
            [
                $"Frames {LengthText.ForPaper(spec.FrameThicknessMm, job.Units)} thick, the {face} face on the line. Half-breadth and height of the line to saw to, from the centre line and the table's base, {SheetWords.Unit(job.Units)}. Deduction: from the table's line inward, square to it in the section; it is more than the skins' thickness where the hull leans fore and aft.",
                "Bevel of the edge from square, and the fall over the frame's thickness: + a standing bevel, the other face is the larger and the wood must be left on; - an under bevel, the wood is taken off the other face.",
            ],
            [
                new("frame", 14, false),
                new("at", 9, false),
                new("half-breadth", 14),
                new("height", 14),
                new("deduction", 13),
                new("bevel", 10),
                new("fall", 12),
            ],
            [
                .. setting.Frames.SelectMany(f =>
                    f.Places.Select(
                        (p, i) =>
                            ImmutableArray.Create(
                                i == 0 ? f.Name : "",
                                p.Where,
                                Number(job, p.HalfBreadthMm),
                                Number(job, p.HeightMm),
                                Number(job, p.DeductionMm),
                                Degrees(p.BevelDegrees),
                                Signed(job, p.FallMm)
                            )
                    )
                ),
                .. setting.Transom.Select(
                    (t, i) =>
                        ImmutableArray.Create(
                            i == 0 ? "transom edge" : "",
                            t.Where,
                            "",
                            "",
                            "",
                            Degrees(t.BevelDegrees),
                            ""
                        )
                ),
            ]
        );
    }

    private static ListSheet Runs(Job job, SettingUpPlan setting) =>
        new(
            Block("chine log and stringers"),
            [
                $"Where each passes the frames: from the keel's side along the frame's line, {SheetWords.Unit(job.Units)}. Bevel of a stringer: its outer face from square to plumb sides. Bevel of the chine log: by which its corner is more (+) or less (-) than square.",
            ],
            [
                new("timber", 24, false),
                new("station", 12, false),
                new("along the frame", 16),
                new("bevel", 12),
            ],
            [
                .. setting.Runs.Select(r =>
                    ImmutableArray.Create(
                        r.Name,
                        r.Station,
                        Number(job, r.AlongFrameMm),
                        Degrees(r.BevelDegrees)
                    )
                ),
            ]
        );

    private static ListSheet Rabbet(Job job, SettingUpPlan setting) =>
        new(
            Block("the keel's rabbet"),
            [
                $"Where the keel is rabbeted for the planking: half-breadth and height, {SheetWords.Unit(job.Units)}. Rabbet line: the planking's outer face on the keel's side. Bottom: the whole thickness in, square to the planking. Bearding line: the planking's inner face on the keel's side. Where planks butt a keel built up in layers there is no rabbet; see keel.pdf.",
            ],
            [
                new("station", 10, false),
                new("rabbet line", 12),
                new("height", 12),
                new("bottom", 12),
                new("height", 12),
                new("bearding line", 12),
                new("height", 12),
            ],
            [
                .. setting.Rabbet.Select(r =>
                    ImmutableArray.Create(
                        r.Station,
                        Number(job, r.RabbetLine.X),
                        Number(job, r.RabbetLine.Y),
                        Number(job, r.Bottom.X),
                        Number(job, r.Bottom.Y),
                        Number(job, r.Bearding.X),
                        Number(job, r.Bearding.Y)
                    )
                ),
            ]
        );

    private static ListSheet Corners(Job job, SettingUpSpec spec, SettingUpPlan setting) =>
        new(
            Block("the corner at the chine"),
            [
                $"Trim: from the table's chine carried square to the skin, + outboard of it, - inboard, on the inner and the outer face of each layer, square to the chine, {SheetWords.Unit(job.Units)}. Bevel of the trimmed edge from square, + where the outer face is the longer. Round to {LengthText.ForPaper(spec.CornerRadiusMm, job.Units)} for the cloth (common practice, no source; follow the cloth maker): the rounding begins so far from the corner on each face.",
            ],
            [
                new("station", 10, false),
                new("corner", 10),
                new("layer", 16, false),
                new("inner face", 12),
                new("outer face", 12),
                new("bevel", 10),
                new("rounding", 11),
                new("off corner", 11),
                new("seat of piece", 12),
            ],
            [
                .. setting.Corners.SelectMany(c =>
                    c.Trims.Select(
                        (t, i) =>
                            ImmutableArray.Create(
                                i == 0 ? c.Station : "",
                                i == 0 ? Degrees(c.CornerDegrees).TrimStart('+', ' ') : "",
                                t.Layer,
                                Signed(job, t.InnerFaceMm),
                                Signed(job, t.OuterFaceMm),
                                Degrees(t.BevelDegrees),
                                i == 0 ? Number(job, c.TangentMm) : "",
                                i == 0 ? Number(job, c.OffCornerMm) : "",
                                i == 0 && c.SeatMm is { } seat ? Number(job, seat) : ""
                            )
                    )
                ),
            ]
        );

    private static string Number(Job job, double mm) => LengthText.PaperNumber(mm, job.Units);

    private static string Signed(Job job, double mm)
    {
        string number = Number(job, Math.Abs(mm));
        bool nought = LengthText.OnPaperMm(Math.Abs(mm), job.Units) == 0;
        return nought ? number : (mm < 0 ? "- " : "+ ") + number;
    }

    /// <summary>To half a degree, with its sign.</summary>
    internal static string Degrees(double degrees)
    {
        double half = Math.Round(2 * degrees, MidpointRounding.AwayFromZero) / 2;
        return (
                half < 0 ? "- "
                : half > 0 ? "+ "
                : ""
            )
            + Math.Abs(half).ToString("0.0", CultureInfo.InvariantCulture)
            + "°";
    }
}
