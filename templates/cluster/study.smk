# A study of SheetGen as a Snakemake workflow: the same variants on one machine, on Slurm, or on any executor that Snakemake has.
#
#   snakemake -s study.smk --cores 8 --config project=wall.yaml study=spacing.yaml out=study batch=20
#   snakemake -s study.smk --jobs 100 --cluster "sbatch --cpus-per-task=1 --mem={resources.mem_mb}" --config project=wall.yaml study=spacing.yaml out=study batch=20
#
# project   the project file, or a folder with one
# study     the study: keys of the project file with their values
# out       folder for the results, on a disk that all machines share
# build     how many of the best are built in full at the end; 0 if left out
# sheetgen  the program; sheetgen if left out
# batch     variants a job: a job costs its start, so that quick variants go faster some at a time
# mem_mb    memory that a job asks for
# shared    files that the project file names (pay items, templates, drawings): when one changes, all jobs look again
#
# What is up to date is decided by the program, variant by variant; a job that has nothing to do ends at once. A variant that no project file can
# have (exit code 1) stops nothing: the table names it, and OUT/jobs/study holds the exit code of the gathering.
import os
import shlex
import subprocess

PROJECT = config["project"]
STUDY = config["study"]
OUT = config.get("out", "study")
BUILD = int(config.get("build", 0))
SHEETGEN = config.get("sheetgen", "sheetgen")
BATCH = int(config.get("batch", 1))
SHARED = config.get("shared", [])
SHARED = SHARED.split() if isinstance(SHARED, str) else SHARED

NUMBERS = subprocess.run([*shlex.split(SHEETGEN), "study", PROJECT, STUDY, "--names"], check=True, capture_output=True, text=True).stdout.split()
JOBS = {f"{i // BATCH + 1:05d}": NUMBERS[i:i + BATCH] for i in range(0, len(NUMBERS), BATCH)}
FILES = [f for f in [PROJECT, STUDY, *SHARED] if os.path.isfile(f)]


def only(wildcards):
    return " ".join("--only " + n for n in JOBS[wildcards.job])


localrules: all, table


rule all:
    input:
        OUT + "/jobs/study"


rule variants:
    input:
        FILES
    output:
        touch(OUT + "/jobs/{job}")
    params:
        only=only
    resources:
        mem_mb=int(config.get("mem_mb", 700))
    shell:
        "{SHEETGEN} study {PROJECT:q} {STUDY:q} --out {OUT:q} {params.only} || test $? -le 1"


rule table:
    input:
        expand(OUT + "/jobs/{job}", job=JOBS)
    output:
        OUT + "/jobs/study"
    shell:
        "code=0; {SHEETGEN} study {PROJECT:q} {STUDY:q} --out {OUT:q} --gather --build {BUILD} || code=$?; test $code -le 2 && echo $code > {output:q}"
