using PlankFit.Reading.Offsets;

namespace PlankFit.App.Showing;

/// <summary>What is to be known of the files that a job's text names.</summary>
/// <param name="MayRead">Which of them may be read; null where all may.</param>
/// <param name="Table">Read instead of the file that it stands for; null where none is being mended.</param>
public sealed record JobFiles(Func<string, bool>? MayRead, TableInHand? Table);
