namespace PlankFit.App.Running;

/// <summary>Where sheets stand in the bench book: in the order of the work.</summary>
internal enum InBook
{
    BeforeYouSaw,
    SettingUp,
    Keel,
    AsBuilt,
    Check,
    HowSure,
    Views,
    LaidFlat,
    Timber,
    Joints,
    Boards,
    ToBuy,
    CutSheets,
    PlankList,
    Cards,
    Behind,
    Fastenings,
    Cloth,
    Gluing,
    Structure,
}

/// <summary>Sheets that are used together: a section of the bench book, and a PDF of their own where the job asks for single sheets.</summary>
/// <param name="File">The name of that PDF, without its ending.</param>
/// <param name="Name">As the contents have it.</param>
internal sealed record BookSection(
    InBook Place,
    string File,
    string Name,
    Lazy<IReadOnlyList<Drawing>> Pages
)
{
    public static BookSection Of(
        InBook place,
        string file,
        string name,
        Func<IReadOnlyList<Drawing>> pages
    ) => new(place, file, name, new(pages));
}
