using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>Everything behind the planks with the place that the job gives it, as it is set out with a tape: a sea cock so far from the keel, so far abaft a station.</summary>
internal static class GivenPlaces
{
    public static ListSheet Of(BottomPlan plan) =>
        new(
            new("What lies behind", "where each thing is", "no drawing", null, Cautions.Behind),
            [
                $"As the job has it, in {SheetWords.Unit(plan.Job.Units)}: on the planking's inner face, athwart in the section, from the keel's side or from the chine to the centre of each; along the hull, level, from the station nearest by.",
            ],
            [
                new("what", 0.28, false),
                new("kind", 0.12, false),
                new("its centre", 0.36, false),
                new("wide", 0.1),
                new("over", 0.24, false),
            ],
            [
                .. plan.Job.Framing.Select(f =>
                    ImmutableArray.Create(
                        FramingWords.Sided(f),
                        FramingWords.Of(f.Kind),
                        Where(plan, f.Line),
                        LengthText.PaperNumber(f.WidthMm, plan.Job.Units),
                        Over(plan, f)
                    )
                ),
            ]
        );

    private static string Where(BottomPlan plan, FramingLine line)
    {
        string Mm(double mm) => LengthText.ForPaper(mm, plan.Job.Units);
        return line switch
        {
            FramingLine.Offsets(var name) => $"along {name}",
            FramingLine.FromKeel(var mm) => $"{Mm(mm)} from the keel",
            FramingLine.FromChine(var mm) => $"{Mm(mm)} from the chine",
            FramingLine.AtPosition(var x) => Along(plan, x),
            FramingLine.AtStation(var name) => $"at station {name}",
            FramingLine.Spot(var along, var across) =>
                $"{Where(plan, along)}, {Where(plan, across)}",
            _ => "",
        };
    }

    private static string Over(BottomPlan plan, FramingSpec f)
    {
        string Mm(double mm) => LengthText.ForPaper(mm, plan.Job.Units);
        return f.LengthMm is { } length ? $"{Mm(length)} along the hull"
            : f.IsAcross
                ? (f.OutFromMm, f.OutToMm) switch
                {
                    (null, null) => "keel to chine",
                    ({ } from, { } to) => $"{Mm(from)} to {Mm(to)} from the keel",
                    ({ } from, null) => $"from {Mm(from)} out to the chine",
                    (null, { } to) => $"keel to {Mm(to)} from it",
                }
            : (f.FromMm, f.ToMm) switch
            {
                (null, null) => "the whole bottom",
                ({ } from, { } to) => $"begins {Along(plan, from)}, ends {Along(plan, to)}",
                ({ } from, null) => $"begins {Along(plan, from)}",
                (null, { } to) => $"ends {Along(plan, to)}",
            };
    }

    private static string Along(BottomPlan plan, double x) =>
        FromStation.Of(plan.Hull.Stations, x).Words(plan.Job.Units);
}
