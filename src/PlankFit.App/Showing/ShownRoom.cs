using System.Collections.Immutable;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Export.Lines;
using PlankFit.Export.Tables;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Showing;

/// <summary>The sheets and tables of one part of the work, as `lay`, `keel`, `check` and `nest` have them, each made when it is first looked at.</summary>
/// <param name="Lacks">What to add to the job where it asks for none of them; empty where they are there.</param>
public sealed record ShownRoom(string Name, string Title, string Lacks)
{
    public required ImmutableArray<(
        string Title,
        Lazy<IReadOnlyList<Drawing>> Pages
    )> Sheets { get; init; }

    public required ImmutableArray<(string Title, Lazy<Table> Table)> Tables { get; init; }

    /// <param name="plan">With its boards, where there are any.</param>
    public static ImmutableArray<ShownRoom> All(BottomPlan plan)
    {
        FeatureFiles all = LayFiles.All(plan);
        ShownRoom Of(string name, string title, InBook[] places, string[] tables, string lacks)
        {
            (string, Lazy<IReadOnlyList<Drawing>>)[] sheets =
            [
                .. all.Sheets.Where(s => places.Contains(s.Place)).Select(s => (s.Name, s.Pages)),
            ];
            (string, Lazy<Table>)[] lists =
            [
                .. all
                    .Tables.Where(t => tables.Contains(t.File))
                    .Select(t => (t.File.Replace('-', ' '), t.Table)),
            ];
            return new(name, title, sheets.Length + lists.Length == 0 ? lacks : "")
            {
                Sheets = [.. sheets],
                Tables = [.. lists],
            };
        }

        return
        [
            Of("check", "Check before sawing", [InBook.Check], ["how-sure"], ""),
            Of(
                "keel",
                "Keel",
                [InBook.Keel],
                ["keel", "keel-cap"],
                "The job has no keel layers: add a [[keel-layer]] for each (plankfit help keel)."
            ),
            Of(
                "boards",
                "Boards",
                [InBook.Boards, InBook.CutSheets],
                [
                    "boards",
                    "cut-list",
                    "cuts",
                    "cuts-by-setting",
                    "offcuts",
                    "shopping-list",
                    "without-a-place",
                ],
                plan.Job.Nest is null
                    ? "The job names no stock: add [nest] with stock = \"stock.csv\", the boards on hand (plankfit help nest)."
                    : "No plan of cutting yet: begin the search."
            ),
            Fairness(plan),
            Of(
                "joints",
                "Joints",
                [InBook.Joints],
                ["joints", "pieces"],
                "No plank is longer than its stock, or the job does not say how long that is: add [joints] (plankfit help joints)."
            ),
            Of(
                "fastenings",
                "Fastenings",
                [InBook.Fastenings, InBook.Behind],
                ["fastenings", "fastenings-to-buy", "what-lies-behind", "lines-to-snap"],
                "The job asks for no fastenings and names nothing behind: add [fastenings] and a [[behind]] for each timber (plankfit help fastenings, behind)."
            ),
            Of(
                "wood",
                "Wood",
                [InBook.Timber],
                ["timber", "species"],
                "The job does not say what wood it is of: add [timber] (plankfit help timber)."
            ),
            Of(
                "cloth",
                "Cloth",
                [InBook.Cloth],
                ["cloth-order", "cloth-pieces", "cloth-cutting", "cloth-lines", "cloth-shear"],
                "The job has no cloth, or does not say what it is cut from: add a [[layer]] of cloth, a [[cloth]] and a [[sheathing]] (plankfit help sheathing)."
            ),
            Of(
                "gluing",
                "Gluing",
                [InBook.Gluing],
                ["resin", "batches", "gluing-order"],
                "The job names neither resin nor glue: add [resin] or [glue], [crew] and [clock] (plankfit help glue)."
            ),
            Of(
                "as-it-stands",
                "As it stands",
                [InBook.AsBuilt, InBook.HowSure],
                ["as-built", "taped", "how-sure", "how-sure-keel"],
                "Nothing was measured on the hull, and nothing is sawn: add [as-built] (plankfit help as-built)."
            ),
        ];
    }

    /// <summary>The lines and how each bends, as `check` draws them.</summary>
    private static ShownRoom Fairness(BottomPlan plan)
    {
        Job job = plan.Job;
        return new("fairness", "Fairness", "")
        {
            Sheets =
            [
                ("The lines", new(() => [LinesPlan.Of(job)])),
                (
                    "How each line bends",
                    new(() =>
                        CurvatureCharts.Of(job, FairnessCheck.Judge(job.Offsets, job.WrittenIn))
                    )
                ),
            ],
            Tables = [],
        };
    }
}
