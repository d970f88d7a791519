namespace PlankFit.Planking.Trust;

/// <summary>
/// How far the table and the frames made from it are trusted: the job's [trust], in mm. "Within" is 19 times in 20, so a standard deviation is within / 1.96; the last
/// unit of the table and a limit that nothing passes are uniform (JCGM 100:2008, 4.3.7). All defaults are proposals, without a source.
/// </summary>
public sealed record TrustSpec
{
    /// <summary>How many standard deviations hold 19 in 20 of a normal error.</summary>
    public const double Within = 1.96;

    /// <summary>The last unit of the table: a cell is rounded to it.</summary>
    public double ReadToMm { get; init; } = 1;

    /// <summary>No cell is lofted further from the table than this, either way.</summary>
    public double LoftedWithinMm { get; init; }

    /// <summary>A frame's own points, each by itself.</summary>
    public double FramesMadeWithinMm { get; init; } = 1.4;

    /// <summary>The keel's edge at a station, by itself.</summary>
    public double KeelMadeWithinMm { get; init; } = 0.8;

    public FrameStanding Standing { get; init; } = FrameStanding.Default;

    public LineBends Bends { get; init; } = LineBends.Default;

    /// <summary>How far all stock together is wider or narrower than the job says.</summary>
    public double StockWidthWithinMm { get; init; } = 0.2;

    /// <summary>The same of the thickness of each layer.</summary>
    public double StockThicknessWithinMm { get; init; } = 0.3;

    /// <summary>One reading of a tape.</summary>
    public double TapeWithinMm { get; init; } = 1.4;

    /// <summary>One reading of a half-breadth to a string stretched along the middle.</summary>
    public double StringWithinMm { get; init; } = 3;

    /// <summary>One reading of a height.</summary>
    public double LevelWithinMm { get; init; } = 4;

    /// <summary>How sure a plank's length is to be before it is sawn, 19 times in 20.</summary>
    public double SawWhenMm { get; init; } = 2;

    public static readonly TrustSpec Default = new();

    /// <summary>Standard deviation of what a cell is out by for having been rounded to the table's last unit, mm: u / √12.</summary>
    public double ReadingSigma => ReadToMm / Math.Sqrt(12);

    /// <summary>The same for having been lofted, mm: a / √3.</summary>
    public double LoftingSigma => LoftedWithinMm / Math.Sqrt(3);

    /// <summary>The standard deviation of what keeps within so much 19 times in 20.</summary>
    public static double Sigma(double within) => within / Within;
}

/// <summary>How true frames stand on the keel, each as a whole, 19 times in 20.</summary>
/// <param name="AthwartMm">To one side; what stands on the keel moves, its own edge does not.</param>
/// <param name="UpMm">Too high or too low, likewise.</param>
/// <param name="AlongMm">Along the hull: the whole station.</param>
/// <param name="HeelMmPerM">Turned about the keel's edge, mm in a metre.</param>
public sealed record FrameStanding(double AthwartMm, double UpMm, double AlongMm, double HeelMmPerM)
{
    public static readonly FrameStanding Default = new(2, 2, 3, 2);
}

/// <summary>How far lines of the hull swell or hollow smoothly, over more frames than one, 19 times in 20.</summary>
/// <param name="ChineMm">Half-breadths of all that stands on the keel.</param>
/// <param name="KeelMm">The keel's edge to the side.</param>
/// <param name="KeelUpMm">The keel's edge up and down.</param>
/// <param name="Over">What of the length goes by before one end of a swelling says little of the other.</param>
public sealed record LineBends(double ChineMm, double KeelMm, double KeelUpMm, double Over)
{
    public static readonly LineBends Default = new(2, 2, 3, 0.2);
}
