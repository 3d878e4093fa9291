// @ts-nocheck
/**
 * Compiled from the definitions in ../schema by `npm run generate`, with ajv (MIT licence).
 * A validator returns whether a value meets its definition; `errors` then holds where it does not.
 */

const nothing = {};
function add(errors, path, keyword, key) {
  const error = path === undefined ? nothing : { path, keyword, key };
  if (errors === null) return [error];
  errors.push(error);
  return errors;
}
function isMap(data) {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}
function has(data, key) {
  return data[key] !== undefined && Object.hasOwn(data, key);
}
function joined(errors, more) {
  if (errors === null) return more;
  for (const error of more) errors.push(error);
  return errors;
}
const keys0 = new Set(["kind","name","colour","duv","draw","count","weight","guide-number","rated-with","rated-as","energy","reflector","meters","power","zoom","durations","colours","regulated","recycle","flashes-per-charge","spare-charges","high-speed-loss","modelling","trigger-voltage","pre-flash"]);
const keys1 = new Set(["kind","name","colour","duv","draw","count","weight","lux","lumens","beam","photometric-file","size","power","flicker"]);
const keys2 = new Set(["name","kind","size","outline","loss","transmits","beam","hot-middle","grid","depth","count","weight"]);
const keys3 = new Set(["kit","title","notes","units","modifiers","stands","cameras","backdrops","meters","measured"]);
const keys4 = new Set(["width","length","height","left-wall","behind-backdrop","walls","ceiling","floor","mains","circuits"]);
const keys5 = new Set(["body","sensor","sync","curtain","shutter-kind","readout","headroom","lens","frame","at","aim","focus","aperture","shutter","iso","filter","exposure","white-balance","held-by"]);
const keys6 = new Set(["kind","height","pose","faces-at","turned","width","depth","rows","stands-on","reflectance","finish","shape","moves","area","glasses","hair","age"]);
const keys7 = new Set(["angle","distance","height","up","left","right","front","behind","before-backdrop"]);
const keys8 = new Set(["role","unit","modifier","lying","power","meters","zoom","grid","gel","at","aim","like","mirrored","mode","modelling","off","trigger","stand","circuit","size","faces","reads","shutter","iso","colour","duv"]);
const keys9 = new Set(["kind","size","at","faces","surface","opening","inside","outside","transmits"]);
const keys10 = new Set(["framing","backdrop","backdrop-over-key","backdrop-even","floor","exposure","ratio","shadow","sharp","motion","ambient","shooting"]);
const keys11 = new Set(["at","of","reads","records","taken","kind","dome","faces","iso"]);
const keys12 = new Set(["plan","title","notes","base","kit","room","ambient","camera","subject","backdrop","lights","panels","points","wanted","readings","accept","tags"]);
const keys13 = new Set(["room","title","width","length","height","left-wall","behind-backdrop","walls","ceiling","floor","mains","circuits"]);
export const plan = validate21;
const pattern0 = new RegExp("\\S", "u");

function validate25(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(data.length > 1000){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern0.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate25.errors = vErrors;
return errors === 0;
}

const pattern13 = new RegExp("^\\p{L}", "u");
const pattern5 = new RegExp("^\\S(?:[^\\r\\n\\t]{0,58}\\S)?$", "u");

function validate29(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern5.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate29.errors = vErrors;
return errors === 0;
}

const pattern7 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}[Kk][ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate33(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern7.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate33.errors = vErrors;
return errors === 0;
}

const pattern8 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(kW|[Ww])[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate35(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern8.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate35.errors = vErrors;
return errors === 0;
}

const pattern9 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(kg|g|lbs?)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate37(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern9.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate37.errors = vErrors;
return errors === 0;
}

const pattern10 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}mm[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate39(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern10.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate39.errors = vErrors;
return errors === 0;
}

const pattern11 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate41(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern11.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate41.errors = vErrors;
return errors === 0;
}

const pattern12 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(?:GN[ \\u00a0\\u2009\\u202f]{0,4})?((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})[ \\u00a0\\u2009\\u202f]{0,4}(?:m|ft|feet))(?:[ \\u00a0\\u2009\\u202f]{1,4}at[ \\u00a0\\u2009\\u202f]{1,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}mm)?[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate43(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern12.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate43.errors = vErrors;
return errors === 0;
}

const pattern14 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:Ws|ws|WS|J)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate46(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern14.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate46.errors = vErrors;
return errors === 0;
}

const pattern15 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:°|deg(?:rees?)?)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate48(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern15.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate48.errors = vErrors;
return errors === 0;
}

const pattern16 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}([fFƒ][ \\u00a0\\u2009\\u202f]{0,4}/?[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:\\+|[-\\u2212])[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,4}/[1-9][0-9]{0,5}|(?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})))?)[ \\u00a0\\u2009\\u202f]{1,4}at[ \\u00a0\\u2009\\u202f]{1,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate50(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern16.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate50.errors = vErrors;
return errors === 0;
}

const pattern17 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(?:(full|[0-9]{1,4}/[1-9][0-9]{0,5})(?:[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])[ \\u00a0\\u2009\\u202f]{0,4}([0-9]{1,4}/[1-9][0-9]{0,5}|(?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))(?:[ \\u00a0\\u2009\\u202f]{0,4}stops?)?)?|((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}%|((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:Ws|ws|WS|J)|dial[ \\u00a0\\u2009\\u202f]{1,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate53(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern17.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate53.errors = vErrors;
return errors === 0;
}

const pattern18 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])?[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾]))[ \\u00a0\\u2009\\u202f]{0,4}(?:stops?|EV)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate56(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern18.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate56.errors = vErrors;
return errors === 0;
}


function validate52(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!((((key0 === "from") || (key0 === "to")) || (key0 === "step")) || (key0 === "dial"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "from")){
if(!(validate53(data.from, instancePath+"/from"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data, "to")){
if(!(validate53(data.to, instancePath+"/to"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data, "step")){
if(!(validate56(data.step, instancePath+"/step"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "dial")){
let data3 = data.dial;
if((typeof data3 == "number") && (isFinite(data3))){
if(data3 > 100 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/dial", "maximum");
errors++;
}
if(data3 <= 0 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/dial", "exclusiveMinimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/dial", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate52.errors = vErrors;
return errors === 0;
}

const pattern19 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:mm[ \\u00a0\\u2009\\u202f]{0,4})?(?:\\.\\.|to|–)[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}mm[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate59(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern19.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate59.errors = vErrors;
return errors === 0;
}

const pattern20 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(?:([0-9]{1,4}/[1-9][0-9]{0,5})(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:s|sec|seconds?))?|((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(µs|μs|us|ms|s|sec|seconds?|min|minutes?))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate62(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern20.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate62.errors = vErrors;
return errors === 0;
}

const pattern21 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}[Vv][ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate70(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern21.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate70.errors = vErrors;
return errors === 0;
}


function validate32(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
let valid0 = false;
const _errs2 = errors;
if(isMap(data)){
if(!has(data, "guide-number")){
vErrors = add(vErrors, instancePath, "required", "guide-number");
errors++;
}
}
var _valid0 = _errs2 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs3 = errors;
if(isMap(data)){
if(!has(data, "energy")){
vErrors = add(vErrors, instancePath, "required", "energy");
errors++;
}
}
var _valid0 = _errs3 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "meters")){
vErrors = add(vErrors, instancePath, "required", "meters");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid0 = valid0 || _valid0;
}
}
if(!valid0){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
const _errs6 = errors;
let valid2 = true;
const _errs7 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "guide-number")) && (missing0 = "guide-number")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
if(_valid1){
const _errs8 = errors;
if(isMap(data)){
if(has(data, "meters")){
vErrors = add(vErrors, instancePath+"/meters", "false schema");
errors++;
}
}
var _valid1 = _errs8 === errors;
valid2 = _valid1;
}
if(!valid2){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys0.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
let data1 = data.kind;
if(typeof data1 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!(data1 === "flash")){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "name")){
let data2 = data.name;
if(typeof data2 === "string"){
if(data2.length > 4000){
vErrors = add(vErrors, instancePath+"/name", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/name", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/name", "type");
errors++;
}
}
if(has(data, "colour")){
if(!(validate33(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
if(has(data, "duv")){
let data4 = data.duv;
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 0.05 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/duv", "maximum");
errors++;
}
if(data4 < -0.05 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/duv", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/duv", "type");
errors++;
}
}
if(has(data, "draw")){
if(!(validate35(data.draw, instancePath+"/draw"))){
vErrors = joined(vErrors, validate35.errors);
errors = vErrors.length;
}
}
if(has(data, "count")){
let data6 = data.count;
if(!(((typeof data6 == "number") && (!(data6 % 1) && !isNaN(data6))) && (isFinite(data6)))){
vErrors = add(vErrors, instancePath+"/count", "type");
errors++;
}
if((typeof data6 == "number") && (isFinite(data6))){
if(data6 > 1000 || isNaN(data6)){
vErrors = add(vErrors, instancePath+"/count", "maximum");
errors++;
}
if(data6 < 0 || isNaN(data6)){
vErrors = add(vErrors, instancePath+"/count", "minimum");
errors++;
}
}
}
if(has(data, "weight")){
if(!(validate37(data.weight, instancePath+"/weight"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
if(has(data, "guide-number")){
let data8 = data["guide-number"];
if((!(isMap(data8))) && (typeof data8 !== "string")){
vErrors = add(vErrors, instancePath+"/guide-number", "type");
errors++;
}
const _errs26 = errors;
let valid8 = true;
const _errs27 = errors;
if(!(isMap(data8))){
vErrors = add(vErrors);
errors++;
}
var _valid2 = _errs27 === errors;
errors = _errs26;
if(vErrors !== null){
if(_errs26){
vErrors.length = _errs26;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid2){
const _errs29 = errors;
if(isMap(data8)){
if(Object.keys(data8).length > 40){
vErrors = add(vErrors, instancePath+"/guide-number", "maxProperties");
errors++;
}
if(Object.keys(data8).length < 1){
vErrors = add(vErrors, instancePath+"/guide-number", "minProperties");
errors++;
}
for(const key1 of Object.keys(data8)){
const _errs31 = errors;
if(!(validate39(key1, instancePath+"/guide-number"))){
vErrors = joined(vErrors, validate39.errors);
errors = vErrors.length;
}
var valid9 = _errs31 === errors;
if(!valid9){
vErrors = add(vErrors, instancePath+"/guide-number", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data8)){
if(!(validate41(data8[key2], instancePath+"/guide-number/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/guide-number", "type");
errors++;
}
var _valid2 = _errs29 === errors;
valid8 = _valid2;
ifClause0 = "then";
}
else {
const _errs34 = errors;
if(!(validate43(data8, instancePath+"/guide-number"))){
vErrors = joined(vErrors, validate43.errors);
errors = vErrors.length;
}
var _valid2 = _errs34 === errors;
valid8 = _valid2;
ifClause0 = "else";
}
if(!valid8){
vErrors = add(vErrors, instancePath+"/guide-number", "if");
errors++;
}
}
if(has(data, "rated-with")){
let data10 = data["rated-with"];
if(typeof data10 !== "string"){
vErrors = add(vErrors, instancePath+"/rated-with", "type");
errors++;
}
const _errs37 = errors;
let valid11 = true;
const _errs38 = errors;
if(typeof data10 === "string"){
if(!pattern13.test(data10)){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs38 === errors;
errors = _errs37;
if(vErrors !== null){
if(_errs37){
vErrors.length = _errs37;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid3){
const _errs39 = errors;
if(!((data10 === "standard reflector") || (data10 === "bare"))){
vErrors = add(vErrors, instancePath+"/rated-with", "enum");
errors++;
}
var _valid3 = _errs39 === errors;
valid11 = _valid3;
ifClause1 = "then";
}
else {
const _errs40 = errors;
if(!(validate39(data10, instancePath+"/rated-with"))){
vErrors = joined(vErrors, validate39.errors);
errors = vErrors.length;
}
var _valid3 = _errs40 === errors;
valid11 = _valid3;
ifClause1 = "else";
}
if(!valid11){
vErrors = add(vErrors, instancePath+"/rated-with", "if");
errors++;
}
}
if(has(data, "rated-as")){
let data11 = data["rated-as"];
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/rated-as", "type");
errors++;
}
if(!((data11 === "print") || (data11 === "measured"))){
vErrors = add(vErrors, instancePath+"/rated-as", "enum");
errors++;
}
}
if(has(data, "energy")){
if(!(validate46(data.energy, instancePath+"/energy"))){
vErrors = joined(vErrors, validate46.errors);
errors = vErrors.length;
}
}
if(has(data, "reflector")){
if(!(validate48(data.reflector, instancePath+"/reflector"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
if(has(data, "meters")){
if(!(validate50(data.meters, instancePath+"/meters"))){
vErrors = joined(vErrors, validate50.errors);
errors = vErrors.length;
}
}
if(has(data, "power")){
if(!(validate52(data.power, instancePath+"/power"))){
vErrors = joined(vErrors, validate52.errors);
errors = vErrors.length;
}
}
if(has(data, "zoom")){
if(!(validate59(data.zoom, instancePath+"/zoom"))){
vErrors = joined(vErrors, validate59.errors);
errors = vErrors.length;
}
}
if(has(data, "durations")){
let data17 = data.durations;
if(Array.isArray(data17)){
if(data17.length > 40){
vErrors = add(vErrors, instancePath+"/durations", "maxItems");
errors++;
}
if(data17.length < 1){
vErrors = add(vErrors, instancePath+"/durations", "minItems");
errors++;
}
const len0 = data17.length;
for(let i0=0; i0<len0; i0++){
let data18 = data17[i0];
const _errs57 = errors;
let valid19 = false;
const _errs58 = errors;
if(isMap(data18)){
if(!has(data18, "t0.1")){
vErrors = add(vErrors, instancePath+"/durations/" + i0, "required", "t0.1");
errors++;
}
}
var _valid4 = _errs58 === errors;
valid19 = valid19 || _valid4;
if(!valid19){
const _errs59 = errors;
if(isMap(data18)){
if(!has(data18, "t0.5")){
vErrors = add(vErrors, instancePath+"/durations/" + i0, "required", "t0.5");
errors++;
}
}
var _valid4 = _errs59 === errors;
valid19 = valid19 || _valid4;
}
if(!valid19){
vErrors = add(vErrors, instancePath+"/durations/" + i0, "anyOf");
errors++;
}
else {
errors = _errs57;
if(vErrors !== null){
if(_errs57){
vErrors.length = _errs57;
}
else {
vErrors = null;
}
}
}
if(isMap(data18)){
if(!has(data18, "power")){
vErrors = add(vErrors, instancePath+"/durations/" + i0, "required", "power");
errors++;
}
for(const key3 of Object.keys(data18)){
if(!(((key3 === "power") || (key3 === "t0.1")) || (key3 === "t0.5"))){
vErrors = add(vErrors, instancePath+"/durations/" + i0, "additionalProperties", key3);
errors++;
}
}
if(has(data18, "power")){
if(!(validate53(data18.power, instancePath+"/durations/" + i0+"/power"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data18, "t0.1")){
if(!(validate62(data18["t0.1"], instancePath+"/durations/" + i0+"/t0.1"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data18, "t0.5")){
if(!(validate62(data18["t0.5"], instancePath+"/durations/" + i0+"/t0.5"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/durations/" + i0, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/durations", "type");
errors++;
}
}
if(has(data, "colours")){
let data22 = data.colours;
if(Array.isArray(data22)){
if(data22.length > 40){
vErrors = add(vErrors, instancePath+"/colours", "maxItems");
errors++;
}
if(data22.length < 1){
vErrors = add(vErrors, instancePath+"/colours", "minItems");
errors++;
}
const len1 = data22.length;
for(let i1=0; i1<len1; i1++){
let data23 = data22[i1];
if(isMap(data23)){
if(!has(data23, "power")){
vErrors = add(vErrors, instancePath+"/colours/" + i1, "required", "power");
errors++;
}
if(!has(data23, "colour")){
vErrors = add(vErrors, instancePath+"/colours/" + i1, "required", "colour");
errors++;
}
for(const key4 of Object.keys(data23)){
if(!((key4 === "power") || (key4 === "colour"))){
vErrors = add(vErrors, instancePath+"/colours/" + i1, "additionalProperties", key4);
errors++;
}
}
if(has(data23, "power")){
if(!(validate53(data23.power, instancePath+"/colours/" + i1+"/power"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data23, "colour")){
if(!(validate33(data23.colour, instancePath+"/colours/" + i1+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/colours/" + i1, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/colours", "type");
errors++;
}
}
if(has(data, "regulated")){
let data26 = data.regulated;
if(typeof data26 !== "string"){
vErrors = add(vErrors, instancePath+"/regulated", "type");
errors++;
}
if(!((data26 === "igbt") || (data26 === "voltage"))){
vErrors = add(vErrors, instancePath+"/regulated", "enum");
errors++;
}
}
if(has(data, "recycle")){
if(!(validate62(data.recycle, instancePath+"/recycle"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data, "flashes-per-charge")){
let data28 = data["flashes-per-charge"];
if(!(((typeof data28 == "number") && (!(data28 % 1) && !isNaN(data28))) && (isFinite(data28)))){
vErrors = add(vErrors, instancePath+"/flashes-per-charge", "type");
errors++;
}
if((typeof data28 == "number") && (isFinite(data28))){
if(data28 > 1000000 || isNaN(data28)){
vErrors = add(vErrors, instancePath+"/flashes-per-charge", "maximum");
errors++;
}
if(data28 < 1 || isNaN(data28)){
vErrors = add(vErrors, instancePath+"/flashes-per-charge", "minimum");
errors++;
}
}
}
if(has(data, "spare-charges")){
let data29 = data["spare-charges"];
if(!(((typeof data29 == "number") && (!(data29 % 1) && !isNaN(data29))) && (isFinite(data29)))){
vErrors = add(vErrors, instancePath+"/spare-charges", "type");
errors++;
}
if((typeof data29 == "number") && (isFinite(data29))){
if(data29 > 1000 || isNaN(data29)){
vErrors = add(vErrors, instancePath+"/spare-charges", "maximum");
errors++;
}
if(data29 < 0 || isNaN(data29)){
vErrors = add(vErrors, instancePath+"/spare-charges", "minimum");
errors++;
}
}
}
if(has(data, "high-speed-loss")){
if(!(validate56(data["high-speed-loss"], instancePath+"/high-speed-loss"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "modelling")){
if(!(validate35(data.modelling, instancePath+"/modelling"))){
vErrors = joined(vErrors, validate35.errors);
errors = vErrors.length;
}
}
if(has(data, "trigger-voltage")){
if(!(validate70(data["trigger-voltage"], instancePath+"/trigger-voltage"))){
vErrors = joined(vErrors, validate70.errors);
errors = vErrors.length;
}
}
if(has(data, "pre-flash")){
if(typeof data["pre-flash"] !== "boolean"){
vErrors = add(vErrors, instancePath+"/pre-flash", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate32.errors = vErrors;
return errors === 0;
}

const pattern23 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:lx|lux)[ \\u00a0\\u2009\\u202f]{1,4}at[ \\u00a0\\u2009\\u202f]{1,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate77(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern23.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate77.errors = vErrors;
return errors === 0;
}

const pattern24 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:lm|lumens?)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate79(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern24.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate79.errors = vErrors;
return errors === 0;
}

const pattern26 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾]))[ \\u00a0\\u2009\\u202f]{0,4}[x×X][ \\u00a0\\u2009\\u202f]{0,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate82(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern26.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate82.errors = vErrors;
return errors === 0;
}


function validate73(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
let valid0 = false;
const _errs2 = errors;
if(isMap(data)){
if(!has(data, "lux")){
vErrors = add(vErrors, instancePath, "required", "lux");
errors++;
}
}
var _valid0 = _errs2 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs3 = errors;
if(isMap(data)){
if(!has(data, "lumens")){
vErrors = add(vErrors, instancePath, "required", "lumens");
errors++;
}
}
var _valid0 = _errs3 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "photometric-file")){
vErrors = add(vErrors, instancePath, "required", "photometric-file");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid0 = valid0 || _valid0;
}
}
if(!valid0){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
const _errs6 = errors;
let valid2 = true;
const _errs7 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "lux")) && (missing0 = "lux")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
if(_valid1){
const _errs8 = errors;
if(isMap(data)){
if(has(data, "lumens")){
vErrors = add(vErrors, instancePath+"/lumens", "false schema");
errors++;
}
if(has(data, "photometric-file")){
vErrors = add(vErrors, instancePath+"/photometric-file", "false schema");
errors++;
}
}
var _valid1 = _errs8 === errors;
valid2 = _valid1;
}
if(!valid2){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs10 = errors;
let valid4 = true;
const _errs11 = errors;
if(isMap(data)){
let missing1;
if((!has(data, "lumens")) && (missing1 = "lumens")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs11 === errors;
errors = _errs10;
if(vErrors !== null){
if(_errs10){
vErrors.length = _errs10;
}
else {
vErrors = null;
}
}
if(_valid2){
const _errs12 = errors;
if(isMap(data)){
if(has(data, "photometric-file")){
vErrors = add(vErrors, instancePath+"/photometric-file", "false schema");
errors++;
}
}
var _valid2 = _errs12 === errors;
valid4 = _valid2;
}
if(!valid4){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs14 = errors;
let valid6 = true;
const _errs15 = errors;
if(isMap(data)){
let missing2;
if((!has(data, "photometric-file")) && (missing2 = "photometric-file")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs15 === errors;
errors = _errs14;
if(vErrors !== null){
if(_errs14){
vErrors.length = _errs14;
}
else {
vErrors = null;
}
}
if(!_valid3){
const _errs16 = errors;
const _errs17 = errors;
let valid7 = true;
const _errs18 = errors;
if(isMap(data)){
let missing3;
if((!has(data, "lumens")) && (missing3 = "lumens")){
vErrors = add(vErrors);
errors++;
}
}
var _valid4 = _errs18 === errors;
errors = _errs17;
if(vErrors !== null){
if(_errs17){
vErrors.length = _errs17;
}
else {
vErrors = null;
}
}
if(_valid4){
const _errs19 = errors;
if(isMap(data)){
if(!has(data, "beam")){
vErrors = add(vErrors, instancePath, "required", "beam");
errors++;
}
}
var _valid4 = _errs19 === errors;
valid7 = _valid4;
}
if(!valid7){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
var _valid3 = _errs16 === errors;
valid6 = _valid3;
}
if(!valid6){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys1.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
let data3 = data.kind;
if(typeof data3 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!(data3 === "continuous")){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "name")){
let data4 = data.name;
if(typeof data4 === "string"){
if(data4.length > 4000){
vErrors = add(vErrors, instancePath+"/name", "maxLength");
errors++;
}
if(!pattern0.test(data4)){
vErrors = add(vErrors, instancePath+"/name", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/name", "type");
errors++;
}
}
if(has(data, "colour")){
if(!(validate33(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
if(has(data, "duv")){
let data6 = data.duv;
if((typeof data6 == "number") && (isFinite(data6))){
if(data6 > 0.05 || isNaN(data6)){
vErrors = add(vErrors, instancePath+"/duv", "maximum");
errors++;
}
if(data6 < -0.05 || isNaN(data6)){
vErrors = add(vErrors, instancePath+"/duv", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/duv", "type");
errors++;
}
}
if(has(data, "draw")){
if(!(validate35(data.draw, instancePath+"/draw"))){
vErrors = joined(vErrors, validate35.errors);
errors = vErrors.length;
}
}
if(has(data, "count")){
let data8 = data.count;
if(!(((typeof data8 == "number") && (!(data8 % 1) && !isNaN(data8))) && (isFinite(data8)))){
vErrors = add(vErrors, instancePath+"/count", "type");
errors++;
}
if((typeof data8 == "number") && (isFinite(data8))){
if(data8 > 1000 || isNaN(data8)){
vErrors = add(vErrors, instancePath+"/count", "maximum");
errors++;
}
if(data8 < 0 || isNaN(data8)){
vErrors = add(vErrors, instancePath+"/count", "minimum");
errors++;
}
}
}
if(has(data, "weight")){
if(!(validate37(data.weight, instancePath+"/weight"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
if(has(data, "lux")){
if(!(validate77(data.lux, instancePath+"/lux"))){
vErrors = joined(vErrors, validate77.errors);
errors = vErrors.length;
}
}
if(has(data, "lumens")){
if(!(validate79(data.lumens, instancePath+"/lumens"))){
vErrors = joined(vErrors, validate79.errors);
errors = vErrors.length;
}
}
if(has(data, "beam")){
if(!(validate48(data.beam, instancePath+"/beam"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
if(has(data, "photometric-file")){
let data13 = data["photometric-file"];
if(typeof data13 === "string"){
if(data13.length > 4000){
vErrors = add(vErrors, instancePath+"/photometric-file", "maxLength");
errors++;
}
if(!pattern0.test(data13)){
vErrors = add(vErrors, instancePath+"/photometric-file", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/photometric-file", "type");
errors++;
}
}
if(has(data, "size")){
if(!(validate82(data.size, instancePath+"/size"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
}
if(has(data, "power")){
if(!(validate52(data.power, instancePath+"/power"))){
vErrors = joined(vErrors, validate52.errors);
errors = vErrors.length;
}
}
if(has(data, "flicker")){
let data16 = data.flicker;
if(typeof data16 !== "string"){
vErrors = add(vErrors, instancePath+"/flicker", "type");
errors++;
}
if(!((data16 === "none") || (data16 === "mains"))){
vErrors = add(vErrors, instancePath+"/flicker", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate73.errors = vErrors;
return errors === 0;
}


function validate31(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(!(isMap(data))){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
const _errs3 = errors;
let valid1 = false;
const _errs4 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "guide-number")) && (missing0 = "guide-number")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs4 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs5 = errors;
if(isMap(data)){
let missing1;
if((!has(data, "energy")) && (missing1 = "energy")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs5 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs6 = errors;
if(isMap(data)){
let missing2;
if((!has(data, "meters")) && (missing2 = "meters")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs6 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs7 = errors;
if(isMap(data)){
let missing3;
if((!has(data, "kind")) && (missing3 = "kind")){
vErrors = add(vErrors);
errors++;
}
else {
if(has(data, "kind")){
if("flash" !== data.kind){
vErrors = add(vErrors);
errors++;
}
}
}
}
var _valid1 = _errs7 === errors;
valid1 = valid1 || _valid1;
}
}
}
if(!valid1){
vErrors = add(vErrors);
errors++;
}
else {
errors = _errs3;
if(vErrors !== null){
if(_errs3){
vErrors.length = _errs3;
}
else {
vErrors = null;
}
}
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs9 = errors;
if(!(validate32(data, instancePath))){
vErrors = joined(vErrors, validate32.errors);
errors = vErrors.length;
}
var _valid0 = _errs9 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs10 = errors;
const _errs11 = errors;
let valid3 = true;
const _errs12 = errors;
const _errs13 = errors;
let valid4 = false;
const _errs14 = errors;
if(isMap(data)){
let missing4;
if((!has(data, "lux")) && (missing4 = "lux")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs14 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs15 = errors;
if(isMap(data)){
let missing5;
if((!has(data, "lumens")) && (missing5 = "lumens")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs15 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs16 = errors;
if(isMap(data)){
let missing6;
if((!has(data, "photometric-file")) && (missing6 = "photometric-file")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs16 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs17 = errors;
if(isMap(data)){
let missing7;
if((!has(data, "beam")) && (missing7 = "beam")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs17 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs18 = errors;
if(isMap(data)){
let missing8;
if((!has(data, "size")) && (missing8 = "size")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs18 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs19 = errors;
if(isMap(data)){
let missing9;
if((!has(data, "flicker")) && (missing9 = "flicker")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs19 === errors;
valid4 = valid4 || _valid3;
if(!valid4){
const _errs20 = errors;
if(isMap(data)){
let missing10;
if((!has(data, "kind")) && (missing10 = "kind")){
vErrors = add(vErrors);
errors++;
}
else {
if(has(data, "kind")){
if("continuous" !== data.kind){
vErrors = add(vErrors);
errors++;
}
}
}
}
var _valid3 = _errs20 === errors;
valid4 = valid4 || _valid3;
}
}
}
}
}
}
if(!valid4){
vErrors = add(vErrors);
errors++;
}
else {
errors = _errs13;
if(vErrors !== null){
if(_errs13){
vErrors.length = _errs13;
}
else {
vErrors = null;
}
}
}
var _valid2 = _errs12 === errors;
errors = _errs11;
if(vErrors !== null){
if(_errs11){
vErrors.length = _errs11;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid2){
const _errs22 = errors;
if(!(validate73(data, instancePath))){
vErrors = joined(vErrors, validate73.errors);
errors = vErrors.length;
}
var _valid2 = _errs22 === errors;
valid3 = _valid2;
ifClause1 = "then";
}
else {
const _errs23 = errors;
if(!(validate32(data, instancePath))){
vErrors = joined(vErrors, validate32.errors);
errors = vErrors.length;
}
var _valid2 = _errs23 === errors;
valid3 = _valid2;
ifClause1 = "else";
}
if(!valid3){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
var _valid0 = _errs10 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate31.errors = vErrors;
return errors === 0;
}

const pattern28 = new RegExp("[x×X]", "u");

function validate90(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data !== "string"){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(typeof data === "string"){
if(!pattern28.test(data)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs3 = errors;
if(!(validate82(data, instancePath))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
var _valid0 = _errs3 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs4 = errors;
if(!(validate41(data, instancePath))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate90.errors = vErrors;
return errors === 0;
}

const pattern29 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}%[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate95(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern29.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate95.errors = vErrors;
return errors === 0;
}


function validate98(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!(isMap(data))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "kind")){
vErrors = add(vErrors, instancePath, "required", "kind");
errors++;
}
if(!has(data, "angle")){
vErrors = add(vErrors, instancePath, "required", "angle");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((key0 === "kind") || (key0 === "angle"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
let data0 = data.kind;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!((data0 === "egg-crate") || (data0 === "honeycomb"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "angle")){
if(!(validate48(data.angle, instancePath+"/angle"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs11 = errors;
if(!(validate48(data, instancePath))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
var _valid0 = _errs11 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate98.errors = vErrors;
return errors === 0;
}


function validate89(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "kind")){
vErrors = add(vErrors, instancePath, "required", "kind");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(keys2.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "name")){
let data0 = data.name;
if(typeof data0 === "string"){
if(data0.length > 4000){
vErrors = add(vErrors, instancePath+"/name", "maxLength");
errors++;
}
if(!pattern0.test(data0)){
vErrors = add(vErrors, instancePath+"/name", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/name", "type");
errors++;
}
}
if(has(data, "kind")){
let data1 = data.kind;
if(typeof data1 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!((((((((((((data1 === "softbox") || (data1 === "octa")) || (data1 === "strip")) || (data1 === "shoot-through umbrella")) || (data1 === "white umbrella")) || (data1 === "silver umbrella")) || (data1 === "deep umbrella")) || (data1 === "beauty dish")) || (data1 === "snoot")) || (data1 === "standard reflector")) || (data1 === "honeycomb")) || (data1 === "bare"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "size")){
if(!(validate90(data.size, instancePath+"/size"))){
vErrors = joined(vErrors, validate90.errors);
errors = vErrors.length;
}
}
if(has(data, "outline")){
let data3 = data.outline;
if(typeof data3 !== "string"){
vErrors = add(vErrors, instancePath+"/outline", "type");
errors++;
}
if(!((((data3 === "rectangle") || (data3 === "disc")) || (data3 === "octagon")) || (data3 === "ring"))){
vErrors = add(vErrors, instancePath+"/outline", "enum");
errors++;
}
}
if(has(data, "loss")){
if(!(validate56(data.loss, instancePath+"/loss"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "transmits")){
if(!(validate95(data.transmits, instancePath+"/transmits"))){
vErrors = joined(vErrors, validate95.errors);
errors = vErrors.length;
}
}
if(has(data, "beam")){
if(!(validate48(data.beam, instancePath+"/beam"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
if(has(data, "hot-middle")){
if(typeof data["hot-middle"] !== "boolean"){
vErrors = add(vErrors, instancePath+"/hot-middle", "type");
errors++;
}
}
if(has(data, "grid")){
if(!(validate98(data.grid, instancePath+"/grid"))){
vErrors = joined(vErrors, validate98.errors);
errors = vErrors.length;
}
}
if(has(data, "depth")){
if(!(validate41(data.depth, instancePath+"/depth"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "count")){
let data10 = data.count;
if(!(((typeof data10 == "number") && (!(data10 % 1) && !isNaN(data10))) && (isFinite(data10)))){
vErrors = add(vErrors, instancePath+"/count", "type");
errors++;
}
if((typeof data10 == "number") && (isFinite(data10))){
if(data10 > 1000 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/count", "maximum");
errors++;
}
if(data10 < 0 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/count", "minimum");
errors++;
}
}
}
if(has(data, "weight")){
if(!(validate37(data.weight, instancePath+"/weight"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate89.errors = vErrors;
return errors === 0;
}


function validate106(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(((((key0 === "highest") || (key0 === "base")) || (key0 === "weight")) || (key0 === "load")) || (key0 === "count"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "highest")){
if(!(validate41(data.highest, instancePath+"/highest"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "base")){
if(!(validate41(data.base, instancePath+"/base"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "weight")){
if(!(validate37(data.weight, instancePath+"/weight"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
if(has(data, "load")){
if(!(validate37(data.load, instancePath+"/load"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
if(has(data, "count")){
let data4 = data.count;
if(!(((typeof data4 == "number") && (!(data4 % 1) && !isNaN(data4))) && (isFinite(data4)))){
vErrors = add(vErrors, instancePath+"/count", "type");
errors++;
}
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 1000 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/count", "maximum");
errors++;
}
if(data4 < 0 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/count", "minimum");
errors++;
}
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate106.errors = vErrors;
return errors === 0;
}

const pattern31 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(?:([0-9]{1,4}/[1-9][0-9]{0,5}(?:\\.[0-9]{1,3})?)(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:s|sec|seconds?))?|((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(s|sec|seconds?|ms))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate114(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern31.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate114.errors = vErrors;
return errors === 0;
}

const pattern33 = new RegExp("^#", "u");
const pattern34 = new RegExp("^#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$", "u");

function validate122(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data !== "string"){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(typeof data === "string"){
if(!pattern33.test(data)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs3 = errors;
if(typeof data === "string"){
if(!pattern34.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
var _valid0 = _errs3 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs4 = errors;
if(!(((((((((((((((data === "red") || (data === "orange")) || (data === "amber")) || (data === "yellow")) || (data === "green")) || (data === "teal")) || (data === "cyan")) || (data === "blue")) || (data === "purple")) || (data === "magenta")) || (data === "pink")) || (data === "brown")) || (data === "white")) || (data === "grey")) || (data === "black"))){
vErrors = add(vErrors, instancePath, "enum");
errors++;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate122.errors = vErrors;
return errors === 0;
}


function validate121(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(((!(isMap(data))) && (!((typeof data == "number") && (isFinite(data))))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
const _errs6 = errors;
let valid1 = false;
const _errs7 = errors;
if(isMap(data)){
if(!has(data, "reflectance")){
vErrors = add(vErrors, instancePath, "required", "reflectance");
errors++;
}
}
var _valid1 = _errs7 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs8 = errors;
if(isMap(data)){
if(!has(data, "colour")){
vErrors = add(vErrors, instancePath, "required", "colour");
errors++;
}
}
var _valid1 = _errs8 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs9 = errors;
if(isMap(data)){
if(!has(data, "name")){
vErrors = add(vErrors, instancePath, "required", "name");
errors++;
}
}
var _valid1 = _errs9 === errors;
valid1 = valid1 || _valid1;
}
}
if(!valid1){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!((((key0 === "name") || (key0 === "reflectance")) || (key0 === "colour")) || (key0 === "finish"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "name")){
let data0 = data.name;
if(typeof data0 === "string"){
if(data0.length > 4000){
vErrors = add(vErrors, instancePath+"/name", "maxLength");
errors++;
}
if(!pattern0.test(data0)){
vErrors = add(vErrors, instancePath+"/name", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/name", "type");
errors++;
}
}
if(has(data, "reflectance")){
let data1 = data.reflectance;
if((typeof data1 == "number") && (isFinite(data1))){
if(data1 > 1 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/reflectance", "maximum");
errors++;
}
if(data1 < 0 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/reflectance", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/reflectance", "type");
errors++;
}
}
if(has(data, "colour")){
if(!(validate122(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate122.errors);
errors = vErrors.length;
}
}
if(has(data, "finish")){
let data3 = data.finish;
if(typeof data3 !== "string"){
vErrors = add(vErrors, instancePath+"/finish", "type");
errors++;
}
if(!(((data3 === "matte") || (data3 === "satin")) || (data3 === "glossy"))){
vErrors = add(vErrors, instancePath+"/finish", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs19 = errors;
const _errs20 = errors;
let valid4 = true;
const _errs21 = errors;
if(!((typeof data == "number") && (isFinite(data)))){
vErrors = add(vErrors);
errors++;
}
var _valid2 = _errs21 === errors;
errors = _errs20;
if(vErrors !== null){
if(_errs20){
vErrors.length = _errs20;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid2){
const _errs23 = errors;
if((typeof data == "number") && (isFinite(data))){
if(data > 1 || isNaN(data)){
vErrors = add(vErrors, instancePath, "maximum");
errors++;
}
if(data < 0 || isNaN(data)){
vErrors = add(vErrors, instancePath, "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid2 = _errs23 === errors;
valid4 = _valid2;
ifClause1 = "then";
}
else {
const _errs25 = errors;
if(typeof data === "string"){
if(data.length > 60){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern0.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid2 = _errs25 === errors;
valid4 = _valid2;
ifClause1 = "else";
}
if(!valid4){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
var _valid0 = _errs19 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate121.errors = vErrors;
return errors === 0;
}


function validate120(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "surface")){
vErrors = add(vErrors, instancePath, "required", "surface");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((((key0 === "surface") || (key0 === "width")) || (key0 === "height")) || (key0 === "finish")) || (key0 === "count"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "surface")){
if(!(validate121(data.surface, instancePath+"/surface"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "width")){
if(!(validate41(data.width, instancePath+"/width"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "finish")){
let data3 = data.finish;
if(typeof data3 !== "string"){
vErrors = add(vErrors, instancePath+"/finish", "type");
errors++;
}
if(!(((data3 === "matte") || (data3 === "satin")) || (data3 === "glossy"))){
vErrors = add(vErrors, instancePath+"/finish", "enum");
errors++;
}
}
if(has(data, "count")){
let data4 = data.count;
if(!(((typeof data4 == "number") && (!(data4 % 1) && !isNaN(data4))) && (isFinite(data4)))){
vErrors = add(vErrors, instancePath+"/count", "type");
errors++;
}
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 1000 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/count", "maximum");
errors++;
}
if(data4 < 0 || isNaN(data4)){
vErrors = add(vErrors, instancePath+"/count", "minimum");
errors++;
}
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate120.errors = vErrors;
return errors === 0;
}


function validate129(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!((key0 === "offset") || (key0 === "flat-over-dome"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "offset")){
if(!(validate56(data.offset, instancePath+"/offset"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "flat-over-dome")){
if(!(validate56(data["flat-over-dome"], instancePath+"/flat-over-dome"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate129.errors = vErrors;
return errors === 0;
}

const pattern36 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}[fFƒ][ \\u00a0\\u2009\\u202f]{0,4}/?[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))(?:[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])[ \\u00a0\\u2009\\u202f]{0,4}([0-9]{1,4}/[1-9][0-9]{0,5}|(?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})))?[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate139(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern36.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate139.errors = vErrors;
return errors === 0;
}


function validate141(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((typeof data == "number") && (isFinite(data))){
if(data > 10000000 || isNaN(data)){
vErrors = add(vErrors, instancePath, "maximum");
errors++;
}
if(data < 1 || isNaN(data)){
vErrors = add(vErrors, instancePath, "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate141.errors = vErrors;
return errors === 0;
}


function validate133(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "unit")){
vErrors = add(vErrors, instancePath, "required", "unit");
errors++;
}
if(!has(data, "power")){
vErrors = add(vErrors, instancePath, "required", "power");
errors++;
}
if(!has(data, "distance")){
vErrors = add(vErrors, instancePath, "required", "distance");
errors++;
}
if(!has(data, "reads")){
vErrors = add(vErrors, instancePath, "required", "reads");
errors++;
}
if(!has(data, "iso")){
vErrors = add(vErrors, instancePath, "required", "iso");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((((((key0 === "unit") || (key0 === "modifier")) || (key0 === "zoom")) || (key0 === "power")) || (key0 === "distance")) || (key0 === "reads")) || (key0 === "iso"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "unit")){
if(!(validate29(data.unit, instancePath+"/unit"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
}
if(has(data, "modifier")){
if(!(validate29(data.modifier, instancePath+"/modifier"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
}
if(has(data, "zoom")){
if(!(validate39(data.zoom, instancePath+"/zoom"))){
vErrors = joined(vErrors, validate39.errors);
errors = vErrors.length;
}
}
if(has(data, "power")){
if(!(validate53(data.power, instancePath+"/power"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data, "distance")){
if(!(validate41(data.distance, instancePath+"/distance"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "reads")){
if(!(validate139(data.reads, instancePath+"/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate133.errors = vErrors;
return errors === 0;
}


function validate28(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys3.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kit")){
if(1 !== data.kit){
vErrors = add(vErrors, instancePath+"/kit", "const");
errors++;
}
}
if(has(data, "title")){
let data1 = data.title;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/title", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/title", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/title", "type");
errors++;
}
}
if(has(data, "notes")){
let data2 = data.notes;
if(typeof data2 === "string"){
if(data2.length > 4000){
vErrors = add(vErrors, instancePath+"/notes", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/notes", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/notes", "type");
errors++;
}
}
if(has(data, "units")){
let data3 = data.units;
if(isMap(data3)){
if(Object.keys(data3).length > 500){
vErrors = add(vErrors, instancePath+"/units", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data3)){
const _errs9 = errors;
if(!(validate29(key1, instancePath+"/units"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid1 = _errs9 === errors;
if(!valid1){
vErrors = add(vErrors, instancePath+"/units", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data3)){
if(!(validate31(data3[key2], instancePath+"/units/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate31.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/units", "type");
errors++;
}
}
if(has(data, "modifiers")){
let data5 = data.modifiers;
if(isMap(data5)){
if(Object.keys(data5).length > 500){
vErrors = add(vErrors, instancePath+"/modifiers", "maxProperties");
errors++;
}
for(const key3 of Object.keys(data5)){
const _errs14 = errors;
if(!(validate29(key3, instancePath+"/modifiers"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid3 = _errs14 === errors;
if(!valid3){
vErrors = add(vErrors, instancePath+"/modifiers", "propertyNames", key3);
errors++;
}
}
for(const key4 of Object.keys(data5)){
if(!(validate89(data5[key4], instancePath+"/modifiers/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate89.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/modifiers", "type");
errors++;
}
}
if(has(data, "stands")){
let data7 = data.stands;
if(isMap(data7)){
if(Object.keys(data7).length > 500){
vErrors = add(vErrors, instancePath+"/stands", "maxProperties");
errors++;
}
for(const key5 of Object.keys(data7)){
const _errs19 = errors;
if(!(validate29(key5, instancePath+"/stands"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid5 = _errs19 === errors;
if(!valid5){
vErrors = add(vErrors, instancePath+"/stands", "propertyNames", key5);
errors++;
}
}
for(const key6 of Object.keys(data7)){
if(!(validate106(data7[key6], instancePath+"/stands/" + key6.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate106.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/stands", "type");
errors++;
}
}
if(has(data, "cameras")){
let data9 = data.cameras;
if(isMap(data9)){
if(Object.keys(data9).length > 100){
vErrors = add(vErrors, instancePath+"/cameras", "maxProperties");
errors++;
}
for(const key7 of Object.keys(data9)){
const _errs24 = errors;
if(!(validate29(key7, instancePath+"/cameras"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid7 = _errs24 === errors;
if(!valid7){
vErrors = add(vErrors, instancePath+"/cameras", "propertyNames", key7);
errors++;
}
}
for(const key8 of Object.keys(data9)){
let data10 = data9[key8];
if(isMap(data10)){
for(const key9 of Object.keys(data10)){
if(!((((((key9 === "sensor") || (key9 === "sync")) || (key9 === "curtain")) || (key9 === "shutter-kind")) || (key9 === "readout")) || (key9 === "headroom"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), "additionalProperties", key9);
errors++;
}
}
if(has(data10, "sensor")){
let data11 = data10.sensor;
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "type");
errors++;
}
const _errs31 = errors;
let valid10 = true;
const _errs32 = errors;
if(typeof data11 === "string"){
if(!pattern13.test(data11)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs32 === errors;
errors = _errs31;
if(vErrors !== null){
if(_errs31){
vErrors.length = _errs31;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs33 = errors;
if(!(((data11 === "full frame") || (data11 === "aps-c")) || (data11 === "four thirds"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "enum");
errors++;
}
var _valid0 = _errs33 === errors;
valid10 = _valid0;
ifClause0 = "then";
}
else {
const _errs34 = errors;
if(!(validate82(data11, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
var _valid0 = _errs34 === errors;
valid10 = _valid0;
ifClause0 = "else";
}
if(!valid10){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "if");
errors++;
}
}
if(has(data10, "sync")){
if(!(validate114(data10.sync, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sync"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data10, "curtain")){
if(!(validate62(data10.curtain, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/curtain"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data10, "shutter-kind")){
let data14 = data10["shutter-kind"];
if(typeof data14 !== "string"){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/shutter-kind", "type");
errors++;
}
if(!(((data14 === "focal-plane") || (data14 === "leaf")) || (data14 === "electronic"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/shutter-kind", "enum");
errors++;
}
}
if(has(data10, "readout")){
if(!(validate62(data10.readout, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/readout"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data10, "headroom")){
if(!(validate56(data10.headroom, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/headroom"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/cameras", "type");
errors++;
}
}
if(has(data, "backdrops")){
let data17 = data.backdrops;
if(isMap(data17)){
if(Object.keys(data17).length > 500){
vErrors = add(vErrors, instancePath+"/backdrops", "maxProperties");
errors++;
}
for(const key10 of Object.keys(data17)){
const _errs47 = errors;
if(!(validate29(key10, instancePath+"/backdrops"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid15 = _errs47 === errors;
if(!valid15){
vErrors = add(vErrors, instancePath+"/backdrops", "propertyNames", key10);
errors++;
}
}
for(const key11 of Object.keys(data17)){
if(!(validate120(data17[key11], instancePath+"/backdrops/" + key11.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate120.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/backdrops", "type");
errors++;
}
}
if(has(data, "meters")){
let data19 = data.meters;
if(isMap(data19)){
if(Object.keys(data19).length > 40){
vErrors = add(vErrors, instancePath+"/meters", "maxProperties");
errors++;
}
for(const key12 of Object.keys(data19)){
const _errs52 = errors;
if(!(validate29(key12, instancePath+"/meters"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid17 = _errs52 === errors;
if(!valid17){
vErrors = add(vErrors, instancePath+"/meters", "propertyNames", key12);
errors++;
}
}
for(const key13 of Object.keys(data19)){
if(!(validate129(data19[key13], instancePath+"/meters/" + key13.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate129.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/meters", "type");
errors++;
}
}
if(has(data, "measured")){
let data21 = data.measured;
if(Array.isArray(data21)){
if(data21.length > 1000){
vErrors = add(vErrors, instancePath+"/measured", "maxItems");
errors++;
}
const len0 = data21.length;
for(let i0=0; i0<len0; i0++){
if(!(validate133(data21[i0], instancePath+"/measured/" + i0))){
vErrors = joined(vErrors, validate133.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/measured", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate28.errors = vErrors;
return errors === 0;
}


function validate27(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!data || typeof data != "object") && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(!(validate28(data, instancePath))){
vErrors = joined(vErrors, validate28.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs5 = errors;
const _errs6 = errors;
let valid1 = true;
const _errs7 = errors;
if(!(Array.isArray(data))){
vErrors = add(vErrors);
errors++;
}
var _valid1 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid1){
const _errs9 = errors;
if(Array.isArray(data)){
if(data.length > 32){
vErrors = add(vErrors, instancePath, "maxItems");
errors++;
}
if(data.length < 1){
vErrors = add(vErrors, instancePath, "minItems");
errors++;
}
const len0 = data.length;
for(let i0=0; i0<len0; i0++){
if(!(validate25(data[i0], instancePath+"/" + i0))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
}
}
var _valid1 = _errs9 === errors;
valid1 = _valid1;
ifClause1 = "then";
}
else {
const _errs11 = errors;
if(!(validate25(data, instancePath))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
var _valid1 = _errs11 === errors;
valid1 = _valid1;
ifClause1 = "else";
}
if(!valid1){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
var _valid0 = _errs5 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate27.errors = vErrors;
return errors === 0;
}

const pattern37 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(50|60)[ \\u00a0\\u2009\\u202f]{0,4}[Hh][Zz][ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate163(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern37.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate163.errors = vErrors;
return errors === 0;
}

const pattern38 = new RegExp("^\\p{L}(?:[\\p{L}\\p{M}\\p{N}_-]| (?=[\\p{L}\\p{N}])){0,39}$", "u");

function validate165(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern38.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate165.errors = vErrors;
return errors === 0;
}

const pattern39 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:A|a|amps?)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate168(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern39.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate168.errors = vErrors;
return errors === 0;
}


function validate148(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys4.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "width")){
if(!(validate41(data.width, instancePath+"/width"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "length")){
if(!(validate41(data.length, instancePath+"/length"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "left-wall")){
if(!(validate41(data["left-wall"], instancePath+"/left-wall"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind-backdrop")){
if(!(validate41(data["behind-backdrop"], instancePath+"/behind-backdrop"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "walls")){
let data5 = data.walls;
if(((!(isMap(data5))) && (!((typeof data5 == "number") && (isFinite(data5))))) && (typeof data5 !== "string")){
vErrors = add(vErrors, instancePath+"/walls", "type");
errors++;
}
const _errs14 = errors;
let valid6 = true;
const _errs15 = errors;
if(!(isMap(data5))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs15 === errors;
errors = _errs14;
if(vErrors !== null){
if(_errs14){
vErrors.length = _errs14;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs17 = errors;
const _errs18 = errors;
let valid7 = true;
const _errs19 = errors;
const _errs20 = errors;
let valid8 = false;
const _errs21 = errors;
if(isMap(data5)){
let missing0;
if((!has(data5, "reflectance")) && (missing0 = "reflectance")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs21 === errors;
valid8 = valid8 || _valid2;
if(!valid8){
const _errs22 = errors;
if(isMap(data5)){
let missing1;
if((!has(data5, "colour")) && (missing1 = "colour")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs22 === errors;
valid8 = valid8 || _valid2;
if(!valid8){
const _errs23 = errors;
if(isMap(data5)){
let missing2;
if((!has(data5, "name")) && (missing2 = "name")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs23 === errors;
valid8 = valid8 || _valid2;
}
}
if(!valid8){
vErrors = add(vErrors);
errors++;
}
else {
errors = _errs20;
if(vErrors !== null){
if(_errs20){
vErrors.length = _errs20;
}
else {
vErrors = null;
}
}
}
var _valid1 = _errs19 === errors;
errors = _errs18;
if(vErrors !== null){
if(_errs18){
vErrors.length = _errs18;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid1){
const _errs24 = errors;
if(!(validate121(data5, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid1 = _errs24 === errors;
valid7 = _valid1;
ifClause1 = "then";
}
else {
const _errs25 = errors;
if(isMap(data5)){
for(const key1 of Object.keys(data5)){
if(!((((key1 === "left") || (key1 === "right")) || (key1 === "front")) || (key1 === "back"))){
vErrors = add(vErrors, instancePath+"/walls", "additionalProperties", key1);
errors++;
}
}
if(has(data5, "left")){
if(!(validate121(data5.left, instancePath+"/walls/left"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data5, "right")){
if(!(validate121(data5.right, instancePath+"/walls/right"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data5, "front")){
if(!(validate121(data5.front, instancePath+"/walls/front"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data5, "back")){
if(!(validate121(data5.back, instancePath+"/walls/back"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/walls", "type");
errors++;
}
var _valid1 = _errs25 === errors;
valid7 = _valid1;
ifClause1 = "else";
}
if(!valid7){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
var _valid0 = _errs17 === errors;
valid6 = _valid0;
ifClause0 = "then";
}
else {
const _errs36 = errors;
const _errs37 = errors;
let valid14 = true;
const _errs38 = errors;
if(!((typeof data5 == "number") && (isFinite(data5)))){
vErrors = add(vErrors);
errors++;
}
var _valid3 = _errs38 === errors;
errors = _errs37;
if(vErrors !== null){
if(_errs37){
vErrors.length = _errs37;
}
else {
vErrors = null;
}
}
let ifClause2;
if(_valid3){
const _errs40 = errors;
if(!(validate121(data5, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid3 = _errs40 === errors;
valid14 = _valid3;
ifClause2 = "then";
}
else {
const _errs41 = errors;
if(!(validate121(data5, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid3 = _errs41 === errors;
valid14 = _valid3;
ifClause2 = "else";
}
if(!valid14){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
var _valid0 = _errs36 === errors;
valid6 = _valid0;
ifClause0 = "else";
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
}
if(has(data, "ceiling")){
if(!(validate121(data.ceiling, instancePath+"/ceiling"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "floor")){
if(!(validate121(data.floor, instancePath+"/floor"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "mains")){
if(!(validate163(data.mains, instancePath+"/mains"))){
vErrors = joined(vErrors, validate163.errors);
errors = vErrors.length;
}
}
if(has(data, "circuits")){
let data13 = data.circuits;
if(isMap(data13)){
if(Object.keys(data13).length > 40){
vErrors = add(vErrors, instancePath+"/circuits", "maxProperties");
errors++;
}
for(const key2 of Object.keys(data13)){
const _errs50 = errors;
if(!(validate165(key2, instancePath+"/circuits"))){
vErrors = joined(vErrors, validate165.errors);
errors = vErrors.length;
}
var valid18 = _errs50 === errors;
if(!valid18){
vErrors = add(vErrors, instancePath+"/circuits", "propertyNames", key2);
errors++;
}
}
for(const key3 of Object.keys(data13)){
let data14 = data13[key3];
if(isMap(data14)){
if(!has(data14, "voltage")){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "voltage");
errors++;
}
if(!has(data14, "breaker")){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "breaker");
errors++;
}
for(const key4 of Object.keys(data14)){
if(!((key4 === "voltage") || (key4 === "breaker"))){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "additionalProperties", key4);
errors++;
}
}
if(has(data14, "voltage")){
if(!(validate70(data14.voltage, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/voltage"))){
vErrors = joined(vErrors, validate70.errors);
errors = vErrors.length;
}
}
if(has(data14, "breaker")){
if(!(validate168(data14.breaker, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/breaker"))){
vErrors = joined(vErrors, validate168.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/circuits", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate148.errors = vErrors;
return errors === 0;
}


function validate172(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs2 = errors;
let valid1 = true;
const _errs3 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "duv")) && (missing0 = "duv")){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs3 === errors;
errors = _errs2;
if(vErrors !== null){
if(_errs2){
vErrors.length = _errs2;
}
else {
vErrors = null;
}
}
if(_valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "colour")){
vErrors = add(vErrors, instancePath, "required", "colour");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid1 = _valid0;
}
if(!valid1){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
if(!has(data, "reads")){
vErrors = add(vErrors, instancePath, "required", "reads");
errors++;
}
if(!has(data, "shutter")){
vErrors = add(vErrors, instancePath, "required", "shutter");
errors++;
}
if(!has(data, "iso")){
vErrors = add(vErrors, instancePath, "required", "iso");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((((key0 === "reads") || (key0 === "shutter")) || (key0 === "iso")) || (key0 === "colour")) || (key0 === "flicker")) || (key0 === "duv"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "reads")){
if(!(validate139(data.reads, instancePath+"/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "shutter")){
if(!(validate114(data.shutter, instancePath+"/shutter"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
if(has(data, "colour")){
if(!(validate33(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
if(has(data, "flicker")){
let data4 = data.flicker;
if(typeof data4 !== "string"){
vErrors = add(vErrors, instancePath+"/flicker", "type");
errors++;
}
if(!((data4 === "none") || (data4 === "mains"))){
vErrors = add(vErrors, instancePath+"/flicker", "enum");
errors++;
}
}
if(has(data, "duv")){
let data5 = data.duv;
if((typeof data5 == "number") && (isFinite(data5))){
if(data5 > 0.05 || isNaN(data5)){
vErrors = add(vErrors, instancePath+"/duv", "maximum");
errors++;
}
if(data5 < -0.05 || isNaN(data5)){
vErrors = add(vErrors, instancePath+"/duv", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/duv", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate172.errors = vErrors;
return errors === 0;
}

const pattern41 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))(?:[ \\u00a0\\u2009\\u202f]{1,4}(?:over|above)[ \\u00a0\\u2009\\u202f]{1,4}(?:the[ \\u00a0\\u2009\\u202f]{1,4})?(table|floor))?[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate188(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern41.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate188.errors = vErrors;
return errors === 0;
}

const pattern42 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:mm|cm|m|metres?|meters?)|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:ft|feet|foot|['’′])(?:[ \\u00a0\\u2009\\u202f]{0,4}(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″]))?|(?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾])[ \\u00a0\\u2009\\u202f]{0,4}(?:inch(?:es)?|in|[\"”″])))[ \\u00a0\\u2009\\u202f]{1,4}(?:camera[- ])?(left|right)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate190(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern42.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate190.errors = vErrors;
return errors === 0;
}


function validate186(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "distance")){
vErrors = add(vErrors, instancePath, "required", "distance");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((key0 === "distance") || (key0 === "height")) || (key0 === "aside"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "distance")){
if(!(validate41(data.distance, instancePath+"/distance"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate188(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate188.errors);
errors = vErrors.length;
}
}
if(has(data, "aside")){
if(!(validate190(data.aside, instancePath+"/aside"))){
vErrors = joined(vErrors, validate190.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate186.errors = vErrors;
return errors === 0;
}


function validate193(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(data.length > 80){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern13.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate193.errors = vErrors;
return errors === 0;
}


function validate195(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(data.length > 60){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern13.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate195.errors = vErrors;
return errors === 0;
}


function validate178(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys5.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "body")){
if(!(validate29(data.body, instancePath+"/body"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
}
if(has(data, "sensor")){
let data1 = data.sensor;
if(typeof data1 !== "string"){
vErrors = add(vErrors, instancePath+"/sensor", "type");
errors++;
}
const _errs6 = errors;
let valid2 = true;
const _errs7 = errors;
if(typeof data1 === "string"){
if(!pattern13.test(data1)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs8 = errors;
if(!(((data1 === "full frame") || (data1 === "aps-c")) || (data1 === "four thirds"))){
vErrors = add(vErrors, instancePath+"/sensor", "enum");
errors++;
}
var _valid0 = _errs8 === errors;
valid2 = _valid0;
ifClause0 = "then";
}
else {
const _errs9 = errors;
if(!(validate82(data1, instancePath+"/sensor"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
var _valid0 = _errs9 === errors;
valid2 = _valid0;
ifClause0 = "else";
}
if(!valid2){
vErrors = add(vErrors, instancePath+"/sensor", "if");
errors++;
}
}
if(has(data, "sync")){
if(!(validate114(data.sync, instancePath+"/sync"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data, "curtain")){
if(!(validate62(data.curtain, instancePath+"/curtain"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data, "shutter-kind")){
let data4 = data["shutter-kind"];
if(typeof data4 !== "string"){
vErrors = add(vErrors, instancePath+"/shutter-kind", "type");
errors++;
}
if(!(((data4 === "focal-plane") || (data4 === "leaf")) || (data4 === "electronic"))){
vErrors = add(vErrors, instancePath+"/shutter-kind", "enum");
errors++;
}
}
if(has(data, "readout")){
if(!(validate62(data.readout, instancePath+"/readout"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data, "headroom")){
if(!(validate56(data.headroom, instancePath+"/headroom"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "lens")){
if(!(validate39(data.lens, instancePath+"/lens"))){
vErrors = joined(vErrors, validate39.errors);
errors = vErrors.length;
}
}
if(has(data, "frame")){
let data8 = data.frame;
if(typeof data8 !== "string"){
vErrors = add(vErrors, instancePath+"/frame", "type");
errors++;
}
if(!((data8 === "vertical") || (data8 === "horizontal"))){
vErrors = add(vErrors, instancePath+"/frame", "enum");
errors++;
}
}
if(has(data, "at")){
if(!(validate186(data.at, instancePath+"/at"))){
vErrors = joined(vErrors, validate186.errors);
errors = vErrors.length;
}
}
if(has(data, "aim")){
if(!(validate193(data.aim, instancePath+"/aim"))){
vErrors = joined(vErrors, validate193.errors);
errors = vErrors.length;
}
}
if(has(data, "focus")){
let data11 = data.focus;
const _errs30 = errors;
let valid10 = true;
const _errs31 = errors;
if(typeof data11 === "string"){
if(!pattern13.test(data11)){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs31 === errors;
errors = _errs30;
if(vErrors !== null){
if(_errs30){
vErrors.length = _errs30;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid1){
const _errs32 = errors;
if(!(validate195(data11, instancePath+"/focus"))){
vErrors = joined(vErrors, validate195.errors);
errors = vErrors.length;
}
var _valid1 = _errs32 === errors;
valid10 = _valid1;
ifClause1 = "then";
}
else {
const _errs33 = errors;
if(!(validate41(data11, instancePath+"/focus"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
var _valid1 = _errs33 === errors;
valid10 = _valid1;
ifClause1 = "else";
}
if(!valid10){
vErrors = add(vErrors, instancePath+"/focus", "if");
errors++;
}
if(typeof data11 === "string"){
if(data11.length > 4000){
vErrors = add(vErrors, instancePath+"/focus", "maxLength");
errors++;
}
if(!pattern0.test(data11)){
vErrors = add(vErrors, instancePath+"/focus", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/focus", "type");
errors++;
}
}
if(has(data, "aperture")){
if(!(validate139(data.aperture, instancePath+"/aperture"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "shutter")){
if(!(validate114(data.shutter, instancePath+"/shutter"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
if(has(data, "filter")){
if(!(validate56(data.filter, instancePath+"/filter"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "exposure")){
let data16 = data.exposure;
if(typeof data16 !== "string"){
vErrors = add(vErrors, instancePath+"/exposure", "type");
errors++;
}
if(!(((data16 === "manual") || (data16 === "auto-iso")) || (data16 === "automatic"))){
vErrors = add(vErrors, instancePath+"/exposure", "enum");
errors++;
}
}
if(has(data, "white-balance")){
if(!(validate33(data["white-balance"], instancePath+"/white-balance"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
if(has(data, "held-by")){
let data18 = data["held-by"];
if(typeof data18 !== "string"){
vErrors = add(vErrors, instancePath+"/held-by", "type");
errors++;
}
if(!((data18 === "person") || (data18 === "stand"))){
vErrors = add(vErrors, instancePath+"/held-by", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate178.errors = vErrors;
return errors === 0;
}

const pattern47 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(?:((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:°|deg(?:rees?)?)[ \\u00a0\\u2009\\u202f]{0,4}(?:camera[- ])?(left|right)|(0|180)[ \\u00a0\\u2009\\u202f]{0,4}(?:°|deg(?:rees?)?))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate207(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern47.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate207.errors = vErrors;
return errors === 0;
}


function validate211(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs2 = errors;
let valid1 = true;
const _errs3 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "people")) && (missing0 = "people")){
vErrors = add(vErrors);
errors++;
}
else {
if(has(data, "people")){
let data0 = data.people;
const _errs4 = errors;
if(!(((typeof data0 == "number") && (!(data0 % 1) && !isNaN(data0))) && (isFinite(data0)))){
vErrors = add(vErrors);
errors++;
}
if(errors === _errs4){
if((typeof data0 == "number") && (isFinite(data0))){
if(data0 < 2 || isNaN(data0)){
vErrors = add(vErrors);
errors++;
}
}
}
}
}
}
var _valid0 = _errs3 === errors;
errors = _errs2;
if(vErrors !== null){
if(_errs2){
vErrors.length = _errs2;
}
else {
vErrors = null;
}
}
if(_valid0){
const _errs6 = errors;
if(isMap(data)){
if(!has(data, "spacing")){
vErrors = add(vErrors, instancePath, "required", "spacing");
errors++;
}
}
var _valid0 = _errs6 === errors;
valid1 = _valid0;
}
if(!valid1){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
if(!has(data, "people")){
vErrors = add(vErrors, instancePath, "required", "people");
errors++;
}
if(!has(data, "faces-at")){
vErrors = add(vErrors, instancePath, "required", "faces-at");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((key0 === "people") || (key0 === "spacing")) || (key0 === "behind")) || (key0 === "faces-at"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "people")){
let data1 = data.people;
if(!(((typeof data1 == "number") && (!(data1 % 1) && !isNaN(data1))) && (isFinite(data1)))){
vErrors = add(vErrors, instancePath+"/people", "type");
errors++;
}
if((typeof data1 == "number") && (isFinite(data1))){
if(data1 > 40 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/people", "maximum");
errors++;
}
if(data1 < 1 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/people", "minimum");
errors++;
}
}
}
if(has(data, "spacing")){
if(!(validate41(data.spacing, instancePath+"/spacing"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind")){
if(!(validate41(data.behind, instancePath+"/behind"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "faces-at")){
if(!(validate188(data["faces-at"], instancePath+"/faces-at"))){
vErrors = joined(vErrors, validate188.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate211.errors = vErrors;
return errors === 0;
}


function validate216(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "height")){
vErrors = add(vErrors, instancePath, "required", "height");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((key0 === "height") || (key0 === "surface")) || (key0 === "size")) || (key0 === "finish"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "surface")){
if(!(validate121(data.surface, instancePath+"/surface"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "size")){
if(!(validate82(data.size, instancePath+"/size"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
}
if(has(data, "finish")){
let data3 = data.finish;
if(typeof data3 !== "string"){
vErrors = add(vErrors, instancePath+"/finish", "type");
errors++;
}
if(!(((data3 === "matte") || (data3 === "satin")) || (data3 === "glossy"))){
vErrors = add(vErrors, instancePath+"/finish", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate216.errors = vErrors;
return errors === 0;
}

const pattern48 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(m/s|cm/s|km/h|ft/s)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate221(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern48.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate221.errors = vErrors;
return errors === 0;
}


function validate204(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys6.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
let data0 = data.kind;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!(((data0 === "person") || (data0 === "group")) || (data0 === "object"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "pose")){
let data2 = data.pose;
if(typeof data2 !== "string"){
vErrors = add(vErrors, instancePath+"/pose", "type");
errors++;
}
if(!(((data2 === "standing") || (data2 === "seated")) || (data2 === "lying"))){
vErrors = add(vErrors, instancePath+"/pose", "enum");
errors++;
}
}
if(has(data, "faces-at")){
if(!(validate188(data["faces-at"], instancePath+"/faces-at"))){
vErrors = joined(vErrors, validate188.errors);
errors = vErrors.length;
}
}
if(has(data, "turned")){
if(!(validate207(data.turned, instancePath+"/turned"))){
vErrors = joined(vErrors, validate207.errors);
errors = vErrors.length;
}
}
if(has(data, "width")){
if(!(validate41(data.width, instancePath+"/width"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "depth")){
if(!(validate41(data.depth, instancePath+"/depth"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "rows")){
let data7 = data.rows;
if(Array.isArray(data7)){
if(data7.length > 40){
vErrors = add(vErrors, instancePath+"/rows", "maxItems");
errors++;
}
if(data7.length < 1){
vErrors = add(vErrors, instancePath+"/rows", "minItems");
errors++;
}
const len0 = data7.length;
for(let i0=0; i0<len0; i0++){
if(!(validate211(data7[i0], instancePath+"/rows/" + i0))){
vErrors = joined(vErrors, validate211.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/rows", "type");
errors++;
}
}
if(has(data, "stands-on")){
if(!(validate216(data["stands-on"], instancePath+"/stands-on"))){
vErrors = joined(vErrors, validate216.errors);
errors = vErrors.length;
}
}
if(has(data, "reflectance")){
let data10 = data.reflectance;
if((typeof data10 == "number") && (isFinite(data10))){
if(data10 > 1 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/reflectance", "maximum");
errors++;
}
if(data10 < 0 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/reflectance", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/reflectance", "type");
errors++;
}
}
if(has(data, "finish")){
let data11 = data.finish;
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/finish", "type");
errors++;
}
if(!((((data11 === "matte") || (data11 === "satin")) || (data11 === "glossy")) || (data11 === "clear"))){
vErrors = add(vErrors, instancePath+"/finish", "enum");
errors++;
}
}
if(has(data, "shape")){
let data12 = data.shape;
if(typeof data12 !== "string"){
vErrors = add(vErrors, instancePath+"/shape", "type");
errors++;
}
if(!(((data12 === "plane") || (data12 === "cylinder")) || (data12 === "ball"))){
vErrors = add(vErrors, instancePath+"/shape", "enum");
errors++;
}
}
if(has(data, "moves")){
if(!(validate221(data.moves, instancePath+"/moves"))){
vErrors = joined(vErrors, validate221.errors);
errors = vErrors.length;
}
}
if(has(data, "area")){
if(!(validate82(data.area, instancePath+"/area"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
}
if(has(data, "glasses")){
if(typeof data.glasses !== "boolean"){
vErrors = add(vErrors, instancePath+"/glasses", "type");
errors++;
}
}
if(has(data, "hair")){
let data16 = data.hair;
if(typeof data16 !== "string"){
vErrors = add(vErrors, instancePath+"/hair", "type");
errors++;
}
if(!(((data16 === "dark") || (data16 === "brown")) || (data16 === "fair"))){
vErrors = add(vErrors, instancePath+"/hair", "enum");
errors++;
}
}
if(has(data, "age")){
let data17 = data.age;
if(typeof data17 !== "string"){
vErrors = add(vErrors, instancePath+"/age", "type");
errors++;
}
if(!((((data17 === "newborn") || (data17 === "baby")) || (data17 === "child")) || (data17 === "adult"))){
vErrors = add(vErrors, instancePath+"/age", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate204.errors = vErrors;
return errors === 0;
}


function validate227(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "reads")){
vErrors = add(vErrors, instancePath, "required", "reads");
errors++;
}
if(!has(data, "shutter")){
vErrors = add(vErrors, instancePath, "required", "shutter");
errors++;
}
if(!has(data, "iso")){
vErrors = add(vErrors, instancePath, "required", "iso");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((((key0 === "reads") || (key0 === "kind")) || (key0 === "shutter")) || (key0 === "iso")) || (key0 === "colour"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "reads")){
if(!(validate139(data.reads, instancePath+"/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "kind")){
let data1 = data.kind;
if(typeof data1 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!((data1 === "incident") || (data1 === "reflected"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "shutter")){
if(!(validate114(data.shutter, instancePath+"/shutter"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
if(has(data, "colour")){
if(!(validate33(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate227.errors = vErrors;
return errors === 0;
}


function validate225(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs2 = errors;
let valid1 = true;
const _errs3 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "sky")) && (missing0 = "sky")){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs3 === errors;
errors = _errs2;
if(vErrors !== null){
if(_errs2){
vErrors.length = _errs2;
}
else {
vErrors = null;
}
}
if(_valid0){
const _errs4 = errors;
if(isMap(data)){
if(has(data, "surface")){
vErrors = add(vErrors, instancePath+"/surface", "false schema");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid1 = _valid0;
}
if(!valid1){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs6 = errors;
let valid3 = true;
const _errs7 = errors;
if(isMap(data)){
let missing1;
if((!has(data, "behind")) && (missing1 = "behind")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
if(_valid1){
const _errs8 = errors;
if(isMap(data)){
if(has(data, "behind-last-row")){
vErrors = add(vErrors, instancePath+"/behind-last-row", "false schema");
errors++;
}
}
var _valid1 = _errs8 === errors;
valid3 = _valid1;
}
if(!valid3){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!((((((((key0 === "surface") || (key0 === "sky")) || (key0 === "width")) || (key0 === "height")) || (key0 === "behind")) || (key0 === "behind-last-row")) || (key0 === "sweep")) || (key0 === "finish"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "surface")){
if(!(validate121(data.surface, instancePath+"/surface"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "sky")){
if(!(validate227(data.sky, instancePath+"/sky"))){
vErrors = joined(vErrors, validate227.errors);
errors = vErrors.length;
}
}
if(has(data, "width")){
if(!(validate41(data.width, instancePath+"/width"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind")){
if(!(validate41(data.behind, instancePath+"/behind"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind-last-row")){
if(!(validate41(data["behind-last-row"], instancePath+"/behind-last-row"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "sweep")){
let data8 = data.sweep;
if(isMap(data8)){
if(!has(data8, "front")){
vErrors = add(vErrors, instancePath+"/sweep", "required", "front");
errors++;
}
for(const key1 of Object.keys(data8)){
if(!(key1 === "front")){
vErrors = add(vErrors, instancePath+"/sweep", "additionalProperties", key1);
errors++;
}
}
if(has(data8, "front")){
if(!(validate41(data8.front, instancePath+"/sweep/front"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/sweep", "type");
errors++;
}
}
if(has(data, "finish")){
let data10 = data.finish;
if(typeof data10 !== "string"){
vErrors = add(vErrors, instancePath+"/finish", "type");
errors++;
}
if(!(((data10 === "matte") || (data10 === "satin")) || (data10 === "glossy"))){
vErrors = add(vErrors, instancePath+"/finish", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate225.errors = vErrors;
return errors === 0;
}


function validate239(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
const _errs2 = errors;
if(!((((((((((((data === "all") || (data === "ambient")) || (data === "subject")) || (data === "subject-left")) || (data === "subject-right")) || (data === "subject-back")) || (data === "backdrop-left")) || (data === "backdrop-right")) || (data === "backdrop-top")) || (data === "backdrop-bottom")) || (data === "floor")) || (data === "camera"))){
vErrors = add(vErrors);
errors++;
}
var valid0 = _errs2 === errors;
if(valid0){
vErrors = add(vErrors, instancePath, "not");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
if(typeof data === "string"){
if(!pattern38.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate239.errors = vErrors;
return errors === 0;
}


function validate242(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!(isMap(data))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(!(validate31(data, instancePath))){
vErrors = joined(vErrors, validate31.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs5 = errors;
if(typeof data === "string"){
if(data.length > 60){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern0.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs5 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate242.errors = vErrors;
return errors === 0;
}


function validate245(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!(isMap(data))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(!(validate89(data, instancePath))){
vErrors = joined(vErrors, validate89.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs5 = errors;
if(typeof data === "string"){
if(data.length > 60){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern0.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs5 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate245.errors = vErrors;
return errors === 0;
}

const pattern52 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])?[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:mireds?|MK⁻¹)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate255(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern52.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate255.errors = vErrors;
return errors === 0;
}


function validate254(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!data || typeof data != "object") && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
const _errs6 = errors;
let valid1 = false;
const _errs7 = errors;
if(isMap(data)){
if(!has(data, "shift")){
vErrors = add(vErrors, instancePath, "required", "shift");
errors++;
}
}
var _valid1 = _errs7 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs8 = errors;
if(isMap(data)){
if(!has(data, "duv")){
vErrors = add(vErrors, instancePath, "required", "duv");
errors++;
}
}
var _valid1 = _errs8 === errors;
valid1 = valid1 || _valid1;
if(!valid1){
const _errs9 = errors;
if(isMap(data)){
if(!has(data, "colour")){
vErrors = add(vErrors, instancePath, "required", "colour");
errors++;
}
}
var _valid1 = _errs9 === errors;
valid1 = valid1 || _valid1;
}
}
if(!valid1){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
}
const _errs11 = errors;
let valid3 = true;
const _errs12 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "shift")) && (missing0 = "shift")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs12 === errors;
errors = _errs11;
if(vErrors !== null){
if(_errs11){
vErrors.length = _errs11;
}
else {
vErrors = null;
}
}
if(_valid2){
const _errs13 = errors;
if(isMap(data)){
if(has(data, "colour")){
vErrors = add(vErrors, instancePath+"/colour", "false schema");
errors++;
}
}
var _valid2 = _errs13 === errors;
valid3 = _valid2;
}
if(!valid3){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs15 = errors;
let valid5 = true;
const _errs16 = errors;
if(isMap(data)){
let missing1;
if((!has(data, "duv")) && (missing1 = "duv")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs16 === errors;
errors = _errs15;
if(vErrors !== null){
if(_errs15){
vErrors.length = _errs15;
}
else {
vErrors = null;
}
}
if(_valid3){
const _errs17 = errors;
if(isMap(data)){
if(has(data, "colour")){
vErrors = add(vErrors, instancePath+"/colour", "false schema");
errors++;
}
}
var _valid3 = _errs17 === errors;
valid5 = _valid3;
}
if(!valid5){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
if(!has(data, "loss")){
vErrors = add(vErrors, instancePath, "required", "loss");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((key0 === "shift") || (key0 === "duv")) || (key0 === "colour")) || (key0 === "loss"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "shift")){
if(!(validate255(data.shift, instancePath+"/shift"))){
vErrors = joined(vErrors, validate255.errors);
errors = vErrors.length;
}
}
if(has(data, "duv")){
let data3 = data.duv;
if((typeof data3 == "number") && (isFinite(data3))){
if(data3 > 0.05 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/duv", "maximum");
errors++;
}
if(data3 < -0.05 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/duv", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/duv", "type");
errors++;
}
}
if(has(data, "colour")){
if(!(validate122(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate122.errors);
errors = vErrors.length;
}
}
if(has(data, "loss")){
if(!(validate56(data.loss, instancePath+"/loss"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs27 = errors;
const _errs28 = errors;
let valid11 = true;
const _errs29 = errors;
if(!(Array.isArray(data))){
vErrors = add(vErrors);
errors++;
}
var _valid4 = _errs29 === errors;
errors = _errs28;
if(vErrors !== null){
if(_errs28){
vErrors.length = _errs28;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid4){
const _errs31 = errors;
if(Array.isArray(data)){
if(data.length > 4){
vErrors = add(vErrors, instancePath, "maxItems");
errors++;
}
if(data.length < 1){
vErrors = add(vErrors, instancePath, "minItems");
errors++;
}
const len0 = data.length;
for(let i0=0; i0<len0; i0++){
let data6 = data[i0];
if(typeof data6 !== "string"){
vErrors = add(vErrors, instancePath+"/" + i0, "type");
errors++;
}
if(!((((((((((((((((((data6 === "full CTO") || (data6 === "3/4 CTO")) || (data6 === "1/2 CTO")) || (data6 === "1/4 CTO")) || (data6 === "1/8 CTO")) || (data6 === "1/8 CTB")) || (data6 === "1/4 CTB")) || (data6 === "1/2 CTB")) || (data6 === "3/4 CTB")) || (data6 === "full CTB")) || (data6 === "full plus-green")) || (data6 === "1/2 plus-green")) || (data6 === "1/4 plus-green")) || (data6 === "1/8 plus-green")) || (data6 === "1/8 minus-green")) || (data6 === "1/4 minus-green")) || (data6 === "1/2 minus-green")) || (data6 === "full minus-green"))){
vErrors = add(vErrors, instancePath+"/" + i0, "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid4 = _errs31 === errors;
valid11 = _valid4;
ifClause1 = "then";
}
else {
const _errs35 = errors;
if(typeof data !== "string"){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
if(!((((((((((((((((((data === "full CTO") || (data === "3/4 CTO")) || (data === "1/2 CTO")) || (data === "1/4 CTO")) || (data === "1/8 CTO")) || (data === "1/8 CTB")) || (data === "1/4 CTB")) || (data === "1/2 CTB")) || (data === "3/4 CTB")) || (data === "full CTB")) || (data === "full plus-green")) || (data === "1/2 plus-green")) || (data === "1/4 plus-green")) || (data === "1/8 plus-green")) || (data === "1/8 minus-green")) || (data === "1/4 minus-green")) || (data === "1/2 minus-green")) || (data === "full minus-green"))){
vErrors = add(vErrors, instancePath, "enum");
errors++;
}
var _valid4 = _errs35 === errors;
valid11 = _valid4;
ifClause1 = "else";
}
if(!valid11){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
var _valid0 = _errs27 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate254.errors = vErrors;
return errors === 0;
}


function validate261(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
let valid0 = false;
const _errs2 = errors;
if(isMap(data)){
if(!has(data, "angle")){
vErrors = add(vErrors, instancePath, "required", "angle");
errors++;
}
}
var _valid0 = _errs2 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs3 = errors;
if(isMap(data)){
if(!has(data, "left")){
vErrors = add(vErrors, instancePath, "required", "left");
errors++;
}
}
var _valid0 = _errs3 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "right")){
vErrors = add(vErrors, instancePath, "required", "right");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs5 = errors;
if(isMap(data)){
if(!has(data, "front")){
vErrors = add(vErrors, instancePath, "required", "front");
errors++;
}
}
var _valid0 = _errs5 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs6 = errors;
if(isMap(data)){
if(!has(data, "behind")){
vErrors = add(vErrors, instancePath, "required", "behind");
errors++;
}
}
var _valid0 = _errs6 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs7 = errors;
if(isMap(data)){
if(!has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath, "required", "before-backdrop");
errors++;
}
}
var _valid0 = _errs7 === errors;
valid0 = valid0 || _valid0;
}
}
}
}
}
if(!valid0){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
const _errs9 = errors;
let valid2 = true;
const _errs10 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "angle")) && (missing0 = "angle")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs10 === errors;
errors = _errs9;
if(vErrors !== null){
if(_errs9){
vErrors.length = _errs9;
}
else {
vErrors = null;
}
}
if(_valid1){
const _errs11 = errors;
if(isMap(data)){
if(has(data, "left")){
vErrors = add(vErrors, instancePath+"/left", "false schema");
errors++;
}
if(has(data, "right")){
vErrors = add(vErrors, instancePath+"/right", "false schema");
errors++;
}
if(has(data, "front")){
vErrors = add(vErrors, instancePath+"/front", "false schema");
errors++;
}
if(has(data, "behind")){
vErrors = add(vErrors, instancePath+"/behind", "false schema");
errors++;
}
if(has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath+"/before-backdrop", "false schema");
errors++;
}
}
var _valid1 = _errs11 === errors;
valid2 = _valid1;
}
if(!valid2){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs13 = errors;
let valid4 = true;
const _errs14 = errors;
if(isMap(data)){
let missing1;
if((!has(data, "distance")) && (missing1 = "distance")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs14 === errors;
errors = _errs13;
if(vErrors !== null){
if(_errs13){
vErrors.length = _errs13;
}
else {
vErrors = null;
}
}
if(_valid2){
const _errs15 = errors;
if(isMap(data)){
if(has(data, "left")){
vErrors = add(vErrors, instancePath+"/left", "false schema");
errors++;
}
if(has(data, "right")){
vErrors = add(vErrors, instancePath+"/right", "false schema");
errors++;
}
if(has(data, "front")){
vErrors = add(vErrors, instancePath+"/front", "false schema");
errors++;
}
if(has(data, "behind")){
vErrors = add(vErrors, instancePath+"/behind", "false schema");
errors++;
}
if(has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath+"/before-backdrop", "false schema");
errors++;
}
}
var _valid2 = _errs15 === errors;
valid4 = _valid2;
}
if(!valid4){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs17 = errors;
let valid6 = true;
const _errs18 = errors;
if(isMap(data)){
let missing2;
if((!has(data, "up")) && (missing2 = "up")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs18 === errors;
errors = _errs17;
if(vErrors !== null){
if(_errs17){
vErrors.length = _errs17;
}
else {
vErrors = null;
}
}
if(_valid3){
const _errs19 = errors;
if(isMap(data)){
if(has(data, "left")){
vErrors = add(vErrors, instancePath+"/left", "false schema");
errors++;
}
if(has(data, "right")){
vErrors = add(vErrors, instancePath+"/right", "false schema");
errors++;
}
if(has(data, "front")){
vErrors = add(vErrors, instancePath+"/front", "false schema");
errors++;
}
if(has(data, "behind")){
vErrors = add(vErrors, instancePath+"/behind", "false schema");
errors++;
}
if(has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath+"/before-backdrop", "false schema");
errors++;
}
if(has(data, "height")){
vErrors = add(vErrors, instancePath+"/height", "false schema");
errors++;
}
}
var _valid3 = _errs19 === errors;
valid6 = _valid3;
}
if(!valid6){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs21 = errors;
let valid8 = true;
const _errs22 = errors;
if(isMap(data)){
let missing3;
if((!has(data, "left")) && (missing3 = "left")){
vErrors = add(vErrors);
errors++;
}
}
var _valid4 = _errs22 === errors;
errors = _errs21;
if(vErrors !== null){
if(_errs21){
vErrors.length = _errs21;
}
else {
vErrors = null;
}
}
if(_valid4){
const _errs23 = errors;
if(isMap(data)){
if(has(data, "right")){
vErrors = add(vErrors, instancePath+"/right", "false schema");
errors++;
}
}
var _valid4 = _errs23 === errors;
valid8 = _valid4;
}
if(!valid8){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs25 = errors;
let valid10 = true;
const _errs26 = errors;
if(isMap(data)){
let missing4;
if((!has(data, "front")) && (missing4 = "front")){
vErrors = add(vErrors);
errors++;
}
}
var _valid5 = _errs26 === errors;
errors = _errs25;
if(vErrors !== null){
if(_errs25){
vErrors.length = _errs25;
}
else {
vErrors = null;
}
}
if(_valid5){
const _errs27 = errors;
if(isMap(data)){
if(has(data, "behind")){
vErrors = add(vErrors, instancePath+"/behind", "false schema");
errors++;
}
if(has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath+"/before-backdrop", "false schema");
errors++;
}
}
var _valid5 = _errs27 === errors;
valid10 = _valid5;
}
if(!valid10){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs29 = errors;
let valid12 = true;
const _errs30 = errors;
if(isMap(data)){
let missing5;
if((!has(data, "behind")) && (missing5 = "behind")){
vErrors = add(vErrors);
errors++;
}
}
var _valid6 = _errs30 === errors;
errors = _errs29;
if(vErrors !== null){
if(_errs29){
vErrors.length = _errs29;
}
else {
vErrors = null;
}
}
if(_valid6){
const _errs31 = errors;
if(isMap(data)){
if(has(data, "before-backdrop")){
vErrors = add(vErrors, instancePath+"/before-backdrop", "false schema");
errors++;
}
}
var _valid6 = _errs31 === errors;
valid12 = _valid6;
}
if(!valid12){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
const _errs33 = errors;
let valid14 = true;
const _errs34 = errors;
if(isMap(data)){
let missing6;
if((!has(data, "distance")) && (missing6 = "distance")){
vErrors = add(vErrors);
errors++;
}
}
var _valid7 = _errs34 === errors;
errors = _errs33;
if(vErrors !== null){
if(_errs33){
vErrors.length = _errs33;
}
else {
vErrors = null;
}
}
if(_valid7){
const _errs35 = errors;
if(isMap(data)){
if(!has(data, "angle")){
vErrors = add(vErrors, instancePath, "required", "angle");
errors++;
}
}
var _valid7 = _errs35 === errors;
valid14 = _valid7;
}
if(!valid14){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys7.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "angle")){
if(!(validate207(data.angle, instancePath+"/angle"))){
vErrors = joined(vErrors, validate207.errors);
errors = vErrors.length;
}
}
if(has(data, "distance")){
if(!(validate41(data.distance, instancePath+"/distance"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate188(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate188.errors);
errors = vErrors.length;
}
}
if(has(data, "up")){
if(!(validate48(data.up, instancePath+"/up"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
if(has(data, "left")){
if(!(validate41(data.left, instancePath+"/left"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "right")){
if(!(validate41(data.right, instancePath+"/right"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "front")){
if(!(validate41(data.front, instancePath+"/front"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind")){
if(!(validate41(data.behind, instancePath+"/behind"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "before-backdrop")){
if(!(validate41(data["before-backdrop"], instancePath+"/before-backdrop"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate261.errors = vErrors;
return errors === 0;
}


function validate260(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!(isMap(data))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(!(validate261(data, instancePath))){
vErrors = joined(vErrors, validate261.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs5 = errors;
if(!(data === "camera")){
vErrors = add(vErrors, instancePath, "enum");
errors++;
}
var _valid0 = _errs5 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate260.errors = vErrors;
return errors === 0;
}

const pattern53 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}(?:°|deg(?:rees?)?)[ \\u00a0\\u2009\\u202f]{0,4}towards?[ \\u00a0\\u2009\\u202f]{1,4}(?:the[ \\u00a0\\u2009\\u202f]{1,4})?(left|right|up|down|camera|backdrop)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate275(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern53.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate275.errors = vErrors;
return errors === 0;
}


function validate273(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if((!(isMap(data))) && (typeof data !== "string")){
vErrors = add(vErrors, instancePath, "type");
errors++;
}
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(!(isMap(data))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "at")){
vErrors = add(vErrors, instancePath, "required", "at");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((key0 === "at") || (key0 === "feather"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "at")){
if(!(validate193(data.at, instancePath+"/at"))){
vErrors = joined(vErrors, validate193.errors);
errors = vErrors.length;
}
}
if(has(data, "feather")){
if(!(validate275(data.feather, instancePath+"/feather"))){
vErrors = joined(vErrors, validate275.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs11 = errors;
if(!(validate193(data, instancePath))){
vErrors = joined(vErrors, validate193.errors);
errors = vErrors.length;
}
var _valid0 = _errs11 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate273.errors = vErrors;
return errors === 0;
}


function validate280(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "by")){
vErrors = add(vErrors, instancePath, "required", "by");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((key0 === "by") || (key0 === "channel")) || (key0 === "group")) || (key0 === "early"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "by")){
let data0 = data.by;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/by", "type");
errors++;
}
if(!(((((data0 === "cable") || (data0 === "radio")) || (data0 === "basic radio")) || (data0 === "optical")) || (data0 === "optical groups"))){
vErrors = add(vErrors, instancePath+"/by", "enum");
errors++;
}
}
if(has(data, "channel")){
let data1 = data.channel;
if(!(((typeof data1 == "number") && (!(data1 % 1) && !isNaN(data1))) && (isFinite(data1)))){
vErrors = add(vErrors, instancePath+"/channel", "type");
errors++;
}
if((typeof data1 == "number") && (isFinite(data1))){
if(data1 > 1000 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/channel", "maximum");
errors++;
}
if(data1 < 0 || isNaN(data1)){
vErrors = add(vErrors, instancePath+"/channel", "minimum");
errors++;
}
}
}
if(has(data, "group")){
let data2 = data.group;
if((typeof data2 !== "string") && (!(((typeof data2 == "number") && (!(data2 % 1) && !isNaN(data2))) && (isFinite(data2))))){
vErrors = add(vErrors, instancePath+"/group", "type");
errors++;
}
if(typeof data2 === "string"){
if(data2.length > 20){
vErrors = add(vErrors, instancePath+"/group", "maxLength");
errors++;
}
}
}
if(has(data, "early")){
if(typeof data.early !== "boolean"){
vErrors = add(vErrors, instancePath+"/early", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate280.errors = vErrors;
return errors === 0;
}


function validate282(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "kind")){
vErrors = add(vErrors, instancePath, "required", "kind");
errors++;
}
for(const key0 of Object.keys(data)){
if(!((((key0 === "kind") || (key0 === "arm")) || (key0 === "counterweight")) || (key0 === "sandbag"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
if(!(validate29(data.kind, instancePath+"/kind"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
}
if(has(data, "arm")){
if(!(validate41(data.arm, instancePath+"/arm"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "counterweight")){
if(!(validate37(data.counterweight, instancePath+"/counterweight"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
if(has(data, "sandbag")){
if(!(validate37(data.sandbag, instancePath+"/sandbag"))){
vErrors = joined(vErrors, validate37.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate282.errors = vErrors;
return errors === 0;
}


function validate290(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
let valid0 = true;
const _errs2 = errors;
if(typeof data === "string"){
if(!pattern13.test(data)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs2 === errors;
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs3 = errors;
if(!(validate195(data, instancePath))){
vErrors = joined(vErrors, validate195.errors);
errors = vErrors.length;
}
var _valid0 = _errs3 === errors;
valid0 = _valid0;
ifClause0 = "then";
}
else {
const _errs4 = errors;
if(!(validate207(data, instancePath))){
vErrors = joined(vErrors, validate207.errors);
errors = vErrors.length;
}
var _valid0 = _errs4 === errors;
valid0 = _valid0;
ifClause0 = "else";
}
if(!valid0){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(typeof data === "string"){
if(data.length > 4000){
vErrors = add(vErrors, instancePath, "maxLength");
errors++;
}
if(!pattern0.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate290.errors = vErrors;
return errors === 0;
}


function validate241(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs2 = errors;
let valid1 = true;
const _errs3 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "reads")) && (missing0 = "reads")){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs3 === errors;
errors = _errs2;
if(vErrors !== null){
if(_errs2){
vErrors.length = _errs2;
}
else {
vErrors = null;
}
}
if(_valid0){
const _errs4 = errors;
if(isMap(data)){
if(!has(data, "shutter")){
vErrors = add(vErrors, instancePath, "required", "shutter");
errors++;
}
if(!has(data, "iso")){
vErrors = add(vErrors, instancePath, "required", "iso");
errors++;
}
}
var _valid0 = _errs4 === errors;
valid1 = _valid0;
}
if(!valid1){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys8.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "role")){
let data0 = data.role;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/role", "type");
errors++;
}
if(!(((((((data0 === "key") || (data0 === "fill")) || (data0 === "rim")) || (data0 === "hair")) || (data0 === "kicker")) || (data0 === "backdrop")) || (data0 === "effect"))){
vErrors = add(vErrors, instancePath+"/role", "enum");
errors++;
}
}
if(has(data, "unit")){
if(!(validate242(data.unit, instancePath+"/unit"))){
vErrors = joined(vErrors, validate242.errors);
errors = vErrors.length;
}
}
if(has(data, "modifier")){
if(!(validate245(data.modifier, instancePath+"/modifier"))){
vErrors = joined(vErrors, validate245.errors);
errors = vErrors.length;
}
}
if(has(data, "lying")){
if(typeof data.lying !== "boolean"){
vErrors = add(vErrors, instancePath+"/lying", "type");
errors++;
}
}
if(has(data, "power")){
if(!(validate53(data.power, instancePath+"/power"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data, "meters")){
let data5 = data.meters;
if((!(isMap(data5))) && (typeof data5 !== "string")){
vErrors = add(vErrors, instancePath+"/meters", "type");
errors++;
}
const _errs18 = errors;
let valid6 = true;
const _errs19 = errors;
if(!(isMap(data5))){
vErrors = add(vErrors);
errors++;
}
var _valid1 = _errs19 === errors;
errors = _errs18;
if(vErrors !== null){
if(_errs18){
vErrors.length = _errs18;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid1){
const _errs21 = errors;
if(isMap(data5)){
if(!has(data5, "reads")){
vErrors = add(vErrors, instancePath+"/meters", "required", "reads");
errors++;
}
for(const key1 of Object.keys(data5)){
if(!((key1 === "reads") || (key1 === "at"))){
vErrors = add(vErrors, instancePath+"/meters", "additionalProperties", key1);
errors++;
}
}
if(has(data5, "reads")){
if(!(validate139(data5.reads, instancePath+"/meters/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data5, "at")){
if(!(validate195(data5.at, instancePath+"/meters/at"))){
vErrors = joined(vErrors, validate195.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/meters", "type");
errors++;
}
var _valid1 = _errs21 === errors;
valid6 = _valid1;
ifClause0 = "then";
}
else {
const _errs28 = errors;
if(!(validate139(data5, instancePath+"/meters"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
var _valid1 = _errs28 === errors;
valid6 = _valid1;
ifClause0 = "else";
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/meters", "if");
errors++;
}
}
if(has(data, "zoom")){
if(!(validate39(data.zoom, instancePath+"/zoom"))){
vErrors = joined(vErrors, validate39.errors);
errors = vErrors.length;
}
}
if(has(data, "grid")){
if(!(validate98(data.grid, instancePath+"/grid"))){
vErrors = joined(vErrors, validate98.errors);
errors = vErrors.length;
}
}
if(has(data, "gel")){
if(!(validate254(data.gel, instancePath+"/gel"))){
vErrors = joined(vErrors, validate254.errors);
errors = vErrors.length;
}
}
if(has(data, "at")){
if(!(validate260(data.at, instancePath+"/at"))){
vErrors = joined(vErrors, validate260.errors);
errors = vErrors.length;
}
}
if(has(data, "aim")){
if(!(validate273(data.aim, instancePath+"/aim"))){
vErrors = joined(vErrors, validate273.errors);
errors = vErrors.length;
}
}
if(has(data, "like")){
if(!(validate239(data.like, instancePath+"/like"))){
vErrors = joined(vErrors, validate239.errors);
errors = vErrors.length;
}
}
if(has(data, "mirrored")){
if(typeof data.mirrored !== "boolean"){
vErrors = add(vErrors, instancePath+"/mirrored", "type");
errors++;
}
}
if(has(data, "mode")){
let data15 = data.mode;
if(typeof data15 !== "string"){
vErrors = add(vErrors, instancePath+"/mode", "type");
errors++;
}
if(!(((data15 === "manual") || (data15 === "automatic")) || (data15 === "high-speed"))){
vErrors = add(vErrors, instancePath+"/mode", "enum");
errors++;
}
}
if(has(data, "modelling")){
let data16 = data.modelling;
if((typeof data16 !== "string") && (typeof data16 !== "boolean")){
vErrors = add(vErrors, instancePath+"/modelling", "type");
errors++;
}
if(!((((data16 === "on") || (data16 === "off")) || (data16 === true)) || (data16 === false))){
vErrors = add(vErrors, instancePath+"/modelling", "enum");
errors++;
}
}
if(has(data, "off")){
if(typeof data.off !== "boolean"){
vErrors = add(vErrors, instancePath+"/off", "type");
errors++;
}
}
if(has(data, "trigger")){
if(!(validate280(data.trigger, instancePath+"/trigger"))){
vErrors = joined(vErrors, validate280.errors);
errors = vErrors.length;
}
}
if(has(data, "stand")){
if(!(validate282(data.stand, instancePath+"/stand"))){
vErrors = joined(vErrors, validate282.errors);
errors = vErrors.length;
}
}
if(has(data, "circuit")){
if(!(validate165(data.circuit, instancePath+"/circuit"))){
vErrors = joined(vErrors, validate165.errors);
errors = vErrors.length;
}
}
if(has(data, "size")){
if(!(validate82(data.size, instancePath+"/size"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
}
if(has(data, "faces")){
if(!(validate290(data.faces, instancePath+"/faces"))){
vErrors = joined(vErrors, validate290.errors);
errors = vErrors.length;
}
}
if(has(data, "reads")){
if(!(validate139(data.reads, instancePath+"/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "shutter")){
if(!(validate114(data.shutter, instancePath+"/shutter"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
if(has(data, "colour")){
if(!(validate33(data.colour, instancePath+"/colour"))){
vErrors = joined(vErrors, validate33.errors);
errors = vErrors.length;
}
}
if(has(data, "duv")){
let data27 = data.duv;
if((typeof data27 == "number") && (isFinite(data27))){
if(data27 > 0.05 || isNaN(data27)){
vErrors = add(vErrors, instancePath+"/duv", "maximum");
errors++;
}
if(data27 < -0.05 || isNaN(data27)){
vErrors = add(vErrors, instancePath+"/duv", "minimum");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/duv", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate241.errors = vErrors;
return errors === 0;
}


function validate299(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
const _errs2 = errors;
if(!((((((((((((((((((((((((((data === "all") || (data === "ambient")) || (data === "subject")) || (data === "subject-left")) || (data === "subject-right")) || (data === "subject-back")) || (data === "hair")) || (data === "backdrop")) || (data === "backdrop-left")) || (data === "backdrop-right")) || (data === "backdrop-top")) || (data === "backdrop-bottom")) || (data === "floor")) || (data === "camera")) || (data === "left-wall")) || (data === "right-wall")) || (data === "front-wall")) || (data === "back-wall")) || (data === "ceiling")) || (data === "left")) || (data === "right")) || (data === "up")) || (data === "down")) || (data === "light")) || (data === "level")) || (data === "row"))){
vErrors = add(vErrors);
errors++;
}
var valid0 = _errs2 === errors;
if(valid0){
vErrors = add(vErrors, instancePath, "not");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
if(typeof data === "string"){
if(!pattern38.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate299.errors = vErrors;
return errors === 0;
}


function validate301(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys9.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kind")){
let data0 = data.kind;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!((((data0 === "flag") || (data0 === "reflector")) || (data0 === "v-flat")) || (data0 === "scrim"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "size")){
if(!(validate82(data.size, instancePath+"/size"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
}
if(has(data, "at")){
if(!(validate261(data.at, instancePath+"/at"))){
vErrors = joined(vErrors, validate261.errors);
errors = vErrors.length;
}
}
if(has(data, "faces")){
if(!(validate290(data.faces, instancePath+"/faces"))){
vErrors = joined(vErrors, validate290.errors);
errors = vErrors.length;
}
}
if(has(data, "surface")){
if(!(validate121(data.surface, instancePath+"/surface"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "opening")){
if(!(validate48(data.opening, instancePath+"/opening"))){
vErrors = joined(vErrors, validate48.errors);
errors = vErrors.length;
}
}
if(has(data, "inside")){
if(!(validate121(data.inside, instancePath+"/inside"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "outside")){
if(!(validate121(data.outside, instancePath+"/outside"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "transmits")){
if(!(validate95(data.transmits, instancePath+"/transmits"))){
vErrors = joined(vErrors, validate95.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate301.errors = vErrors;
return errors === 0;
}

const pattern57 = new RegExp("^row-[0-9]", "u");

function validate311(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
const _errs2 = errors;
if(!((((((((((((((((((((((((((data === "all") || (data === "ambient")) || (data === "subject")) || (data === "subject-left")) || (data === "subject-right")) || (data === "subject-back")) || (data === "hair")) || (data === "backdrop")) || (data === "backdrop-left")) || (data === "backdrop-right")) || (data === "backdrop-top")) || (data === "backdrop-bottom")) || (data === "floor")) || (data === "camera")) || (data === "left-wall")) || (data === "right-wall")) || (data === "front-wall")) || (data === "back-wall")) || (data === "ceiling")) || (data === "left")) || (data === "right")) || (data === "up")) || (data === "down")) || (data === "light")) || (data === "level")) || (data === "row"))){
vErrors = add(vErrors);
errors++;
}
var valid0 = _errs2 === errors;
if(valid0){
vErrors = add(vErrors, instancePath, "not");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
const _errs4 = errors;
const _errs5 = errors;
if(typeof data === "string"){
if(!pattern57.test(data)){
vErrors = add(vErrors);
errors++;
}
}
var valid2 = _errs5 === errors;
if(valid2){
vErrors = add(vErrors, instancePath, "not");
errors++;
}
else {
errors = _errs4;
if(vErrors !== null){
if(_errs4){
vErrors.length = _errs4;
}
else {
vErrors = null;
}
}
}
if(typeof data === "string"){
if(!pattern38.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate311.errors = vErrors;
return errors === 0;
}

const pattern59 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])?[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾]))[ \\u00a0\\u2009\\u202f]{0,4}(?:(?:(?:stops?|EV)[ \\u00a0\\u2009\\u202f]{0,4})?(?:\\.\\.|to|–)[ \\u00a0\\u2009\\u202f]{0,4}(\\+|[-\\u2212])?[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?: ?[½⅓⅔¼¾]|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|[½⅓⅔¼¾]))[ \\u00a0\\u2009\\u202f]{0,4})?(?:stops?|EV)[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate316(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern59.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate316.errors = vErrors;
return errors === 0;
}

const pattern60 = new RegExp("^[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}:[ \\u00a0\\u2009\\u202f]{0,4}((?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}))[ \\u00a0\\u2009\\u202f]{0,4}$", "u");

function validate320(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(typeof data === "string"){
if(!pattern60.test(data)){
vErrors = add(vErrors, instancePath, "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate320.errors = vErrors;
return errors === 0;
}


function validate314(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys10.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "framing")){
let data0 = data.framing;
if(typeof data0 !== "string"){
vErrors = add(vErrors, instancePath+"/framing", "type");
errors++;
}
if(!((((((data0 === "face") || (data0 === "head and shoulders")) || (data0 === "waist")) || (data0 === "three-quarter")) || (data0 === "full length")) || (data0 === "all"))){
vErrors = add(vErrors, instancePath+"/framing", "enum");
errors++;
}
}
if(has(data, "backdrop")){
let data1 = data.backdrop;
if((!(isMap(data1))) && (typeof data1 !== "string")){
vErrors = add(vErrors, instancePath+"/backdrop", "type");
errors++;
}
const _errs6 = errors;
let valid1 = true;
const _errs7 = errors;
if(!(isMap(data1))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs7 === errors;
errors = _errs6;
if(vErrors !== null){
if(_errs6){
vErrors.length = _errs6;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs9 = errors;
const _errs10 = errors;
let valid2 = true;
const _errs11 = errors;
if(isMap(data1)){
let missing0;
if((!has(data1, "colour")) && (missing0 = "colour")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs11 === errors;
errors = _errs10;
if(vErrors !== null){
if(_errs10){
vErrors.length = _errs10;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid1){
const _errs12 = errors;
if(isMap(data1)){
if(!has(data1, "colour")){
vErrors = add(vErrors, instancePath+"/backdrop", "required", "colour");
errors++;
}
for(const key1 of Object.keys(data1)){
if(!(key1 === "colour")){
vErrors = add(vErrors, instancePath+"/backdrop", "additionalProperties", key1);
errors++;
}
}
if(has(data1, "colour")){
if(!(validate122(data1.colour, instancePath+"/backdrop/colour"))){
vErrors = joined(vErrors, validate122.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/backdrop", "type");
errors++;
}
var _valid1 = _errs12 === errors;
valid2 = _valid1;
ifClause1 = "then";
}
else {
const _errs17 = errors;
if(isMap(data1)){
if(!has(data1, "tone")){
vErrors = add(vErrors, instancePath+"/backdrop", "required", "tone");
errors++;
}
for(const key2 of Object.keys(data1)){
if(!(key2 === "tone")){
vErrors = add(vErrors, instancePath+"/backdrop", "additionalProperties", key2);
errors++;
}
}
if(has(data1, "tone")){
let data3 = data1.tone;
if(!(((typeof data3 == "number") && (!(data3 % 1) && !isNaN(data3))) && (isFinite(data3)))){
vErrors = add(vErrors, instancePath+"/backdrop/tone", "type");
errors++;
}
if((typeof data3 == "number") && (isFinite(data3))){
if(data3 > 255 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/backdrop/tone", "maximum");
errors++;
}
if(data3 < 0 || isNaN(data3)){
vErrors = add(vErrors, instancePath+"/backdrop/tone", "minimum");
errors++;
}
}
}
}
else {
vErrors = add(vErrors, instancePath+"/backdrop", "type");
errors++;
}
var _valid1 = _errs17 === errors;
valid2 = _valid1;
ifClause1 = "else";
}
if(!valid2){
vErrors = add(vErrors, instancePath+"/backdrop", "if");
errors++;
}
var _valid0 = _errs9 === errors;
valid1 = _valid0;
ifClause0 = "then";
}
else {
const _errs22 = errors;
if(!((((data1 === "white") || (data1 === "grey")) || (data1 === "black")) || (data1 === "any"))){
vErrors = add(vErrors, instancePath+"/backdrop", "enum");
errors++;
}
var _valid0 = _errs22 === errors;
valid1 = _valid0;
ifClause0 = "else";
}
if(!valid1){
vErrors = add(vErrors, instancePath+"/backdrop", "if");
errors++;
}
}
if(has(data, "backdrop-over-key")){
if(!(validate316(data["backdrop-over-key"], instancePath+"/backdrop-over-key"))){
vErrors = joined(vErrors, validate316.errors);
errors = vErrors.length;
}
}
if(has(data, "backdrop-even")){
if(!(validate56(data["backdrop-even"], instancePath+"/backdrop-even"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "floor")){
let data6 = data.floor;
if(typeof data6 !== "string"){
vErrors = add(vErrors, instancePath+"/floor", "type");
errors++;
}
if(!((data6 === "white") || (data6 === "any"))){
vErrors = add(vErrors, instancePath+"/floor", "enum");
errors++;
}
}
if(has(data, "exposure")){
if(!(validate56(data.exposure, instancePath+"/exposure"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
if(has(data, "ratio")){
let data8 = data.ratio;
const _errs33 = errors;
let valid9 = false;
const _errs34 = errors;
if(isMap(data8)){
if(!has(data8, "lit-to-shadow")){
vErrors = add(vErrors, instancePath+"/ratio", "required", "lit-to-shadow");
errors++;
}
}
var _valid2 = _errs34 === errors;
valid9 = valid9 || _valid2;
if(!valid9){
const _errs35 = errors;
if(isMap(data8)){
if(!has(data8, "key-to-fill")){
vErrors = add(vErrors, instancePath+"/ratio", "required", "key-to-fill");
errors++;
}
}
var _valid2 = _errs35 === errors;
valid9 = valid9 || _valid2;
}
if(!valid9){
vErrors = add(vErrors, instancePath+"/ratio", "anyOf");
errors++;
}
else {
errors = _errs33;
if(vErrors !== null){
if(_errs33){
vErrors.length = _errs33;
}
else {
vErrors = null;
}
}
}
const _errs37 = errors;
let valid11 = true;
const _errs38 = errors;
if(isMap(data8)){
let missing1;
if((!has(data8, "lit-to-shadow")) && (missing1 = "lit-to-shadow")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs38 === errors;
errors = _errs37;
if(vErrors !== null){
if(_errs37){
vErrors.length = _errs37;
}
else {
vErrors = null;
}
}
if(_valid3){
const _errs39 = errors;
if(isMap(data8)){
if(has(data8, "key-to-fill")){
vErrors = add(vErrors, instancePath+"/ratio/key-to-fill", "false schema");
errors++;
}
}
var _valid3 = _errs39 === errors;
valid11 = _valid3;
}
if(!valid11){
vErrors = add(vErrors, instancePath+"/ratio", "if");
errors++;
}
if(isMap(data8)){
for(const key3 of Object.keys(data8)){
if(!((key3 === "lit-to-shadow") || (key3 === "key-to-fill"))){
vErrors = add(vErrors, instancePath+"/ratio", "additionalProperties", key3);
errors++;
}
}
if(has(data8, "lit-to-shadow")){
if(!(validate320(data8["lit-to-shadow"], instancePath+"/ratio/lit-to-shadow"))){
vErrors = joined(vErrors, validate320.errors);
errors = vErrors.length;
}
}
if(has(data8, "key-to-fill")){
if(!(validate320(data8["key-to-fill"], instancePath+"/ratio/key-to-fill"))){
vErrors = joined(vErrors, validate320.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/ratio", "type");
errors++;
}
}
if(has(data, "shadow")){
let data12 = data.shadow;
if(typeof data12 !== "string"){
vErrors = add(vErrors, instancePath+"/shadow", "type");
errors++;
}
if(!(((data12 === "hidden") || (data12 === "soft")) || (data12 === "any"))){
vErrors = add(vErrors, instancePath+"/shadow", "enum");
errors++;
}
}
if(has(data, "sharp")){
let data13 = data.sharp;
if(typeof data13 !== "string"){
vErrors = add(vErrors, instancePath+"/sharp", "type");
errors++;
}
const _errs49 = errors;
let valid16 = true;
const _errs50 = errors;
if(typeof data13 === "string"){
if(!pattern13.test(data13)){
vErrors = add(vErrors);
errors++;
}
}
var _valid4 = _errs50 === errors;
errors = _errs49;
if(vErrors !== null){
if(_errs49){
vErrors.length = _errs49;
}
else {
vErrors = null;
}
}
let ifClause2;
if(_valid4){
const _errs51 = errors;
if(!(((data13 === "face") || (data13 === "subject")) || (data13 === "rows"))){
vErrors = add(vErrors, instancePath+"/sharp", "enum");
errors++;
}
var _valid4 = _errs51 === errors;
valid16 = _valid4;
ifClause2 = "then";
}
else {
const _errs52 = errors;
if(!(validate41(data13, instancePath+"/sharp"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
var _valid4 = _errs52 === errors;
valid16 = _valid4;
ifClause2 = "else";
}
if(!valid16){
vErrors = add(vErrors, instancePath+"/sharp", "if");
errors++;
}
}
if(has(data, "motion")){
let data14 = data.motion;
if(typeof data14 !== "string"){
vErrors = add(vErrors, instancePath+"/motion", "type");
errors++;
}
if(!((data14 === "frozen") || (data14 === "any"))){
vErrors = add(vErrors, instancePath+"/motion", "enum");
errors++;
}
}
if(has(data, "ambient")){
let data15 = data.ambient;
if((!(isMap(data15))) && (typeof data15 !== "string")){
vErrors = add(vErrors, instancePath+"/ambient", "type");
errors++;
}
const _errs57 = errors;
let valid17 = true;
const _errs58 = errors;
if(!(isMap(data15))){
vErrors = add(vErrors);
errors++;
}
var _valid5 = _errs58 === errors;
errors = _errs57;
if(vErrors !== null){
if(_errs57){
vErrors.length = _errs57;
}
else {
vErrors = null;
}
}
let ifClause3;
if(_valid5){
const _errs60 = errors;
if(isMap(data15)){
if(!has(data15, "under-key")){
vErrors = add(vErrors, instancePath+"/ambient", "required", "under-key");
errors++;
}
for(const key4 of Object.keys(data15)){
if(!(key4 === "under-key")){
vErrors = add(vErrors, instancePath+"/ambient", "additionalProperties", key4);
errors++;
}
}
if(has(data15, "under-key")){
if(!(validate56(data15["under-key"], instancePath+"/ambient/under-key"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/ambient", "type");
errors++;
}
var _valid5 = _errs60 === errors;
valid17 = _valid5;
ifClause3 = "then";
}
else {
const _errs65 = errors;
if(!((data15 === "none") || (data15 === "any"))){
vErrors = add(vErrors, instancePath+"/ambient", "enum");
errors++;
}
var _valid5 = _errs65 === errors;
valid17 = _valid5;
ifClause3 = "else";
}
if(!valid17){
vErrors = add(vErrors, instancePath+"/ambient", "if");
errors++;
}
}
if(has(data, "shooting")){
let data17 = data.shooting;
if(isMap(data17)){
if(!has(data17, "every")){
vErrors = add(vErrors, instancePath+"/shooting", "required", "every");
errors++;
}
for(const key5 of Object.keys(data17)){
if(!((key5 === "every") || (key5 === "frames"))){
vErrors = add(vErrors, instancePath+"/shooting", "additionalProperties", key5);
errors++;
}
}
if(has(data17, "every")){
if(!(validate62(data17.every, instancePath+"/shooting/every"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data17, "frames")){
let data19 = data17.frames;
if(!(((typeof data19 == "number") && (!(data19 % 1) && !isNaN(data19))) && (isFinite(data19)))){
vErrors = add(vErrors, instancePath+"/shooting/frames", "type");
errors++;
}
if((typeof data19 == "number") && (isFinite(data19))){
if(data19 > 1000000 || isNaN(data19)){
vErrors = add(vErrors, instancePath+"/shooting/frames", "maximum");
errors++;
}
if(data19 < 1 || isNaN(data19)){
vErrors = add(vErrors, instancePath+"/shooting/frames", "minimum");
errors++;
}
}
}
}
else {
vErrors = add(vErrors, instancePath+"/shooting", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate314.errors = vErrors;
return errors === 0;
}


function validate328(data, instancePath = ""){
let vErrors = null;
let errors = 0;
const _errs1 = errors;
let valid0 = false;
const _errs2 = errors;
if(isMap(data)){
if(!has(data, "reads")){
vErrors = add(vErrors, instancePath, "required", "reads");
errors++;
}
}
var _valid0 = _errs2 === errors;
valid0 = valid0 || _valid0;
if(!valid0){
const _errs3 = errors;
if(isMap(data)){
if(!has(data, "records")){
vErrors = add(vErrors, instancePath, "required", "records");
errors++;
}
}
var _valid0 = _errs3 === errors;
valid0 = valid0 || _valid0;
}
if(!valid0){
vErrors = add(vErrors, instancePath, "anyOf");
errors++;
}
else {
errors = _errs1;
if(vErrors !== null){
if(_errs1){
vErrors.length = _errs1;
}
else {
vErrors = null;
}
}
}
const _errs5 = errors;
let valid2 = true;
const _errs6 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "reads")) && (missing0 = "reads")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs6 === errors;
errors = _errs5;
if(vErrors !== null){
if(_errs5){
vErrors.length = _errs5;
}
else {
vErrors = null;
}
}
if(_valid1){
const _errs7 = errors;
if(isMap(data)){
if(has(data, "records")){
vErrors = add(vErrors, instancePath+"/records", "false schema");
errors++;
}
}
var _valid1 = _errs7 === errors;
valid2 = _valid1;
}
if(!valid2){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
if(isMap(data)){
if(!has(data, "at")){
vErrors = add(vErrors, instancePath, "required", "at");
errors++;
}
if(!has(data, "of")){
vErrors = add(vErrors, instancePath, "required", "of");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(keys11.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "at")){
if(!(validate195(data.at, instancePath+"/at"))){
vErrors = joined(vErrors, validate195.errors);
errors = vErrors.length;
}
}
if(has(data, "of")){
let data2 = data.of;
if((!(Array.isArray(data2))) && (typeof data2 !== "string")){
vErrors = add(vErrors, instancePath+"/of", "type");
errors++;
}
const _errs13 = errors;
let valid6 = true;
const _errs14 = errors;
if(!(Array.isArray(data2))){
vErrors = add(vErrors);
errors++;
}
var _valid2 = _errs14 === errors;
errors = _errs13;
if(vErrors !== null){
if(_errs13){
vErrors.length = _errs13;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid2){
const _errs16 = errors;
if(Array.isArray(data2)){
if(data2.length > 64){
vErrors = add(vErrors, instancePath+"/of", "maxItems");
errors++;
}
if(data2.length < 1){
vErrors = add(vErrors, instancePath+"/of", "minItems");
errors++;
}
const len0 = data2.length;
for(let i0=0; i0<len0; i0++){
if(!(validate239(data2[i0], instancePath+"/of/" + i0))){
vErrors = joined(vErrors, validate239.errors);
errors = vErrors.length;
}
}
}
var _valid2 = _errs16 === errors;
valid6 = _valid2;
ifClause0 = "then";
}
else {
const _errs18 = errors;
if(typeof data2 === "string"){
if(data2.length > 60){
vErrors = add(vErrors, instancePath+"/of", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/of", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/of", "type");
errors++;
}
var _valid2 = _errs18 === errors;
valid6 = _valid2;
ifClause0 = "else";
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/of", "if");
errors++;
}
}
if(has(data, "reads")){
if(!(validate139(data.reads, instancePath+"/reads"))){
vErrors = joined(vErrors, validate139.errors);
errors = vErrors.length;
}
}
if(has(data, "records")){
let data5 = data.records;
if(!(((typeof data5 == "number") && (!(data5 % 1) && !isNaN(data5))) && (isFinite(data5)))){
vErrors = add(vErrors, instancePath+"/records", "type");
errors++;
}
if((typeof data5 == "number") && (isFinite(data5))){
if(data5 > 255 || isNaN(data5)){
vErrors = add(vErrors, instancePath+"/records", "maximum");
errors++;
}
if(data5 < 0 || isNaN(data5)){
vErrors = add(vErrors, instancePath+"/records", "minimum");
errors++;
}
}
}
if(has(data, "taken")){
let data6 = data.taken;
if(isMap(data6)){
if(Object.keys(data6).length > 64){
vErrors = add(vErrors, instancePath+"/taken", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data6)){
const _errs26 = errors;
if(!(validate239(key1, instancePath+"/taken"))){
vErrors = joined(vErrors, validate239.errors);
errors = vErrors.length;
}
var valid10 = _errs26 === errors;
if(!valid10){
vErrors = add(vErrors, instancePath+"/taken", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data6)){
let data7 = data6[key2];
if(isMap(data7)){
for(const key3 of Object.keys(data7)){
if(!((key3 === "power") || (key3 === "distance"))){
vErrors = add(vErrors, instancePath+"/taken/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "additionalProperties", key3);
errors++;
}
}
if(has(data7, "power")){
if(!(validate53(data7.power, instancePath+"/taken/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/power"))){
vErrors = joined(vErrors, validate53.errors);
errors = vErrors.length;
}
}
if(has(data7, "distance")){
if(!(validate41(data7.distance, instancePath+"/taken/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/distance"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/taken/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/taken", "type");
errors++;
}
}
if(has(data, "kind")){
let data10 = data.kind;
if(typeof data10 !== "string"){
vErrors = add(vErrors, instancePath+"/kind", "type");
errors++;
}
if(!((data10 === "incident") || (data10 === "reflected"))){
vErrors = add(vErrors, instancePath+"/kind", "enum");
errors++;
}
}
if(has(data, "dome")){
let data11 = data.dome;
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/dome", "type");
errors++;
}
if(!((data11 === "raised") || (data11 === "flat"))){
vErrors = add(vErrors, instancePath+"/dome", "enum");
errors++;
}
}
if(has(data, "faces")){
if(!(validate195(data.faces, instancePath+"/faces"))){
vErrors = joined(vErrors, validate195.errors);
errors = vErrors.length;
}
}
if(has(data, "iso")){
if(!(validate141(data.iso, instancePath+"/iso"))){
vErrors = joined(vErrors, validate141.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate328.errors = vErrors;
return errors === 0;
}


function validate327(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(Array.isArray(data)){
if(data.length > 500){
vErrors = add(vErrors, instancePath, "maxItems");
errors++;
}
const len0 = data.length;
for(let i0=0; i0<len0; i0++){
if(!(validate328(data[i0], instancePath+"/" + i0))){
vErrors = joined(vErrors, validate328.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate327.errors = vErrors;
return errors === 0;
}

const pattern65 = new RegExp("^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$", "u");

function validate340(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "rule")){
vErrors = add(vErrors, instancePath, "required", "rule");
errors++;
}
if(!has(data, "because")){
vErrors = add(vErrors, instancePath, "required", "because");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((key0 === "rule") || (key0 === "because")) || (key0 === "until"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "rule")){
let data0 = data.rule;
if(typeof data0 === "string"){
if(data0.length > 4000){
vErrors = add(vErrors, instancePath+"/rule", "maxLength");
errors++;
}
if(!pattern0.test(data0)){
vErrors = add(vErrors, instancePath+"/rule", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/rule", "type");
errors++;
}
}
if(has(data, "because")){
let data1 = data.because;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/because", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/because", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/because", "type");
errors++;
}
}
if(has(data, "until")){
let data2 = data.until;
if(typeof data2 === "string"){
if(!pattern65.test(data2)){
vErrors = add(vErrors, instancePath+"/until", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/until", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate340.errors = vErrors;
return errors === 0;
}


function validate339(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(Array.isArray(data)){
if(data.length > 500){
vErrors = add(vErrors, instancePath, "maxItems");
errors++;
}
const len0 = data.length;
for(let i0=0; i0<len0; i0++){
if(!(validate340(data[i0], instancePath+"/" + i0))){
vErrors = joined(vErrors, validate340.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate339.errors = vErrors;
return errors === 0;
}


function validate24(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys12.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "plan")){
if(1 !== data.plan){
vErrors = add(vErrors, instancePath+"/plan", "const");
errors++;
}
}
if(has(data, "title")){
let data1 = data.title;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/title", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/title", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/title", "type");
errors++;
}
}
if(has(data, "notes")){
let data2 = data.notes;
if(typeof data2 === "string"){
if(data2.length > 4000){
vErrors = add(vErrors, instancePath+"/notes", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/notes", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/notes", "type");
errors++;
}
}
if(has(data, "base")){
if(!(validate25(data.base, instancePath+"/base"))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
}
if(has(data, "kit")){
if(!(validate27(data.kit, instancePath+"/kit"))){
vErrors = joined(vErrors, validate27.errors);
errors = vErrors.length;
}
}
if(has(data, "room")){
let data5 = data.room;
if((!(isMap(data5))) && (typeof data5 !== "string")){
vErrors = add(vErrors, instancePath+"/room", "type");
errors++;
}
const _errs12 = errors;
let valid2 = true;
const _errs13 = errors;
if(!(isMap(data5))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs13 === errors;
errors = _errs12;
if(vErrors !== null){
if(_errs12){
vErrors.length = _errs12;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs15 = errors;
if(!(validate148(data5, instancePath+"/room"))){
vErrors = joined(vErrors, validate148.errors);
errors = vErrors.length;
}
var _valid0 = _errs15 === errors;
valid2 = _valid0;
ifClause0 = "then";
}
else {
const _errs16 = errors;
if(!(validate25(data5, instancePath+"/room"))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
var _valid0 = _errs16 === errors;
valid2 = _valid0;
ifClause0 = "else";
}
if(!valid2){
vErrors = add(vErrors, instancePath+"/room", "if");
errors++;
}
}
if(has(data, "ambient")){
if(!(validate172(data.ambient, instancePath+"/ambient"))){
vErrors = joined(vErrors, validate172.errors);
errors = vErrors.length;
}
}
if(has(data, "camera")){
if(!(validate178(data.camera, instancePath+"/camera"))){
vErrors = joined(vErrors, validate178.errors);
errors = vErrors.length;
}
}
if(has(data, "subject")){
if(!(validate204(data.subject, instancePath+"/subject"))){
vErrors = joined(vErrors, validate204.errors);
errors = vErrors.length;
}
}
if(has(data, "backdrop")){
if(!(validate225(data.backdrop, instancePath+"/backdrop"))){
vErrors = joined(vErrors, validate225.errors);
errors = vErrors.length;
}
}
if(has(data, "lights")){
let data10 = data.lights;
if(isMap(data10)){
if(Object.keys(data10).length > 64){
vErrors = add(vErrors, instancePath+"/lights", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data10)){
const _errs24 = errors;
if(!(validate239(key1, instancePath+"/lights"))){
vErrors = joined(vErrors, validate239.errors);
errors = vErrors.length;
}
var valid4 = _errs24 === errors;
if(!valid4){
vErrors = add(vErrors, instancePath+"/lights", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data10)){
let data11 = data10[key2];
const _errs27 = errors;
let valid6 = true;
const _errs28 = errors;
if(data11 !== null){
vErrors = add(vErrors);
errors++;
}
var _valid1 = _errs28 === errors;
errors = _errs27;
if(vErrors !== null){
if(_errs27){
vErrors.length = _errs27;
}
else {
vErrors = null;
}
}
if(!_valid1){
const _errs30 = errors;
if(!(validate241(data11, instancePath+"/lights/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate241.errors);
errors = vErrors.length;
}
var _valid1 = _errs30 === errors;
valid6 = _valid1;
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/lights/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/lights", "type");
errors++;
}
}
if(has(data, "panels")){
let data12 = data.panels;
if(isMap(data12)){
if(Object.keys(data12).length > 64){
vErrors = add(vErrors, instancePath+"/panels", "maxProperties");
errors++;
}
for(const key3 of Object.keys(data12)){
const _errs33 = errors;
if(!(validate299(key3, instancePath+"/panels"))){
vErrors = joined(vErrors, validate299.errors);
errors = vErrors.length;
}
var valid7 = _errs33 === errors;
if(!valid7){
vErrors = add(vErrors, instancePath+"/panels", "propertyNames", key3);
errors++;
}
}
for(const key4 of Object.keys(data12)){
let data13 = data12[key4];
const _errs36 = errors;
let valid9 = true;
const _errs37 = errors;
if(data13 !== null){
vErrors = add(vErrors);
errors++;
}
var _valid2 = _errs37 === errors;
errors = _errs36;
if(vErrors !== null){
if(_errs36){
vErrors.length = _errs36;
}
else {
vErrors = null;
}
}
if(!_valid2){
const _errs39 = errors;
if(!(validate301(data13, instancePath+"/panels/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate301.errors);
errors = vErrors.length;
}
var _valid2 = _errs39 === errors;
valid9 = _valid2;
}
if(!valid9){
vErrors = add(vErrors, instancePath+"/panels/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/panels", "type");
errors++;
}
}
if(has(data, "points")){
let data14 = data.points;
if(isMap(data14)){
if(Object.keys(data14).length > 200){
vErrors = add(vErrors, instancePath+"/points", "maxProperties");
errors++;
}
for(const key5 of Object.keys(data14)){
const _errs42 = errors;
if(!(validate311(key5, instancePath+"/points"))){
vErrors = joined(vErrors, validate311.errors);
errors = vErrors.length;
}
var valid10 = _errs42 === errors;
if(!valid10){
vErrors = add(vErrors, instancePath+"/points", "propertyNames", key5);
errors++;
}
}
for(const key6 of Object.keys(data14)){
if(!(validate261(data14[key6], instancePath+"/points/" + key6.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate261.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/points", "type");
errors++;
}
}
if(has(data, "wanted")){
if(!(validate314(data.wanted, instancePath+"/wanted"))){
vErrors = joined(vErrors, validate314.errors);
errors = vErrors.length;
}
}
if(has(data, "readings")){
if(!(validate327(data.readings, instancePath+"/readings"))){
vErrors = joined(vErrors, validate327.errors);
errors = vErrors.length;
}
}
if(has(data, "accept")){
if(!(validate339(data.accept, instancePath+"/accept"))){
vErrors = joined(vErrors, validate339.errors);
errors = vErrors.length;
}
}
if(has(data, "tags")){
let data19 = data.tags;
if(Array.isArray(data19)){
if(data19.length > 100){
vErrors = add(vErrors, instancePath+"/tags", "maxItems");
errors++;
}
const len0 = data19.length;
for(let i0=0; i0<len0; i0++){
let data20 = data19[i0];
if(typeof data20 === "string"){
if(data20.length > 60){
vErrors = add(vErrors, instancePath+"/tags/" + i0, "maxLength");
errors++;
}
if(data20.length < 1){
vErrors = add(vErrors, instancePath+"/tags/" + i0, "minLength");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/tags/" + i0, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/tags", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate24.errors = vErrors;
return errors === 0;
}


function validate344(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "plan")){
vErrors = add(vErrors, instancePath, "required", "plan");
errors++;
}
if(!has(data, "title")){
vErrors = add(vErrors, instancePath, "required", "title");
errors++;
}
if(!has(data, "camera")){
vErrors = add(vErrors, instancePath, "required", "camera");
errors++;
}
if(!has(data, "subject")){
vErrors = add(vErrors, instancePath, "required", "subject");
errors++;
}
if(!has(data, "lights")){
vErrors = add(vErrors, instancePath, "required", "lights");
errors++;
}
if(has(data, "room")){
let data0 = data.room;
if(isMap(data0)){
if(!has(data0, "width")){
vErrors = add(vErrors, instancePath+"/room", "required", "width");
errors++;
}
if(!has(data0, "length")){
vErrors = add(vErrors, instancePath+"/room", "required", "length");
errors++;
}
if(!has(data0, "height")){
vErrors = add(vErrors, instancePath+"/room", "required", "height");
errors++;
}
}
}
if(has(data, "camera")){
let data1 = data.camera;
if(isMap(data1)){
if(!has(data1, "lens")){
vErrors = add(vErrors, instancePath+"/camera", "required", "lens");
errors++;
}
if(!has(data1, "at")){
vErrors = add(vErrors, instancePath+"/camera", "required", "at");
errors++;
}
if(!has(data1, "aperture")){
vErrors = add(vErrors, instancePath+"/camera", "required", "aperture");
errors++;
}
if(!has(data1, "shutter")){
vErrors = add(vErrors, instancePath+"/camera", "required", "shutter");
errors++;
}
if(!has(data1, "iso")){
vErrors = add(vErrors, instancePath+"/camera", "required", "iso");
errors++;
}
}
}
if(has(data, "subject")){
let data2 = data.subject;
const _errs3 = errors;
let valid1 = true;
const _errs4 = errors;
if(isMap(data2)){
let missing0;
if((!has(data2, "kind")) && (missing0 = "kind")){
vErrors = add(vErrors);
errors++;
}
else {
if(has(data2, "kind")){
if("group" !== data2.kind){
vErrors = add(vErrors);
errors++;
}
}
}
}
var _valid0 = _errs4 === errors;
errors = _errs3;
if(vErrors !== null){
if(_errs3){
vErrors.length = _errs3;
}
else {
vErrors = null;
}
}
if(_valid0){
const _errs6 = errors;
if(isMap(data2)){
if(!has(data2, "rows")){
vErrors = add(vErrors, instancePath+"/subject", "required", "rows");
errors++;
}
}
var _valid0 = _errs6 === errors;
valid1 = _valid0;
}
if(!valid1){
vErrors = add(vErrors, instancePath+"/subject", "if");
errors++;
}
if(isMap(data2)){
if(!has(data2, "kind")){
vErrors = add(vErrors, instancePath+"/subject", "required", "kind");
errors++;
}
}
}
if(has(data, "backdrop")){
let data4 = data.backdrop;
const _errs8 = errors;
let valid3 = true;
const _errs9 = errors;
if(isMap(data4)){
let missing1;
if((!has(data4, "sky")) && (missing1 = "sky")){
vErrors = add(vErrors);
errors++;
}
}
var _valid1 = _errs9 === errors;
errors = _errs8;
if(vErrors !== null){
if(_errs8){
vErrors.length = _errs8;
}
else {
vErrors = null;
}
}
if(!_valid1){
const _errs10 = errors;
const _errs11 = errors;
let valid4 = false;
const _errs12 = errors;
if(isMap(data4)){
if(!has(data4, "behind")){
vErrors = add(vErrors, instancePath+"/backdrop", "required", "behind");
errors++;
}
}
var _valid2 = _errs12 === errors;
valid4 = valid4 || _valid2;
if(!valid4){
const _errs13 = errors;
if(isMap(data4)){
if(!has(data4, "behind-last-row")){
vErrors = add(vErrors, instancePath+"/backdrop", "required", "behind-last-row");
errors++;
}
}
var _valid2 = _errs13 === errors;
valid4 = valid4 || _valid2;
}
if(!valid4){
vErrors = add(vErrors, instancePath+"/backdrop", "anyOf");
errors++;
}
else {
errors = _errs11;
if(vErrors !== null){
if(_errs11){
vErrors.length = _errs11;
}
else {
vErrors = null;
}
}
}
if(isMap(data4)){
if(!has(data4, "surface")){
vErrors = add(vErrors, instancePath+"/backdrop", "required", "surface");
errors++;
}
}
var _valid1 = _errs10 === errors;
valid3 = _valid1;
}
if(!valid3){
vErrors = add(vErrors, instancePath+"/backdrop", "if");
errors++;
}
}
if(has(data, "lights")){
let data5 = data.lights;
if(isMap(data5)){
for(const key0 of Object.keys(data5)){
let data6 = data5[key0];
if(!(isMap(data6))){
vErrors = add(vErrors, instancePath+"/lights/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
const _errs18 = errors;
let valid6 = true;
const _errs19 = errors;
if(isMap(data6)){
let missing2;
if((!has(data6, "like")) && (missing2 = "like")){
vErrors = add(vErrors);
errors++;
}
}
var _valid3 = _errs19 === errors;
errors = _errs18;
if(vErrors !== null){
if(_errs18){
vErrors.length = _errs18;
}
else {
vErrors = null;
}
}
if(!_valid3){
const _errs20 = errors;
if(isMap(data6)){
if(!has(data6, "unit")){
vErrors = add(vErrors, instancePath+"/lights/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "unit");
errors++;
}
if(!has(data6, "at")){
vErrors = add(vErrors, instancePath+"/lights/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "at");
errors++;
}
}
var _valid3 = _errs20 === errors;
valid6 = _valid3;
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/lights/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
}
if(has(data, "panels")){
let data7 = data.panels;
if(isMap(data7)){
for(const key1 of Object.keys(data7)){
let data8 = data7[key1];
const _errs25 = errors;
let valid8 = true;
const _errs26 = errors;
if(isMap(data8)){
let missing3;
if((!has(data8, "kind")) && (missing3 = "kind")){
vErrors = add(vErrors);
errors++;
}
else {
if(has(data8, "kind")){
if("scrim" !== data8.kind){
vErrors = add(vErrors);
errors++;
}
}
}
}
var _valid4 = _errs26 === errors;
errors = _errs25;
if(vErrors !== null){
if(_errs25){
vErrors.length = _errs25;
}
else {
vErrors = null;
}
}
if(_valid4){
const _errs28 = errors;
if(isMap(data8)){
if(!has(data8, "transmits")){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "transmits");
errors++;
}
}
var _valid4 = _errs28 === errors;
valid8 = _valid4;
}
if(!valid8){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
if(isMap(data8)){
if(!has(data8, "kind")){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "kind");
errors++;
}
if(!has(data8, "size")){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "size");
errors++;
}
if(!has(data8, "at")){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "at");
errors++;
}
if(!has(data8, "faces")){
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "faces");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/panels/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
}
}
validate344.errors = vErrors;
return errors === 0;
}


function validate23(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(!(validate24(data, instancePath))){
vErrors = joined(vErrors, validate24.errors);
errors = vErrors.length;
}
if(isMap(data)){
if(!has(data, "plan")){
vErrors = add(vErrors, instancePath, "required", "plan");
errors++;
}
if(has(data, "plan")){
if(1 !== data.plan){
vErrors = add(vErrors, instancePath+"/plan", "const");
errors++;
}
}
}
const _errs3 = errors;
let valid2 = true;
const _errs4 = errors;
if(isMap(data)){
let missing0;
if((!has(data, "base")) && (missing0 = "base")){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs4 === errors;
errors = _errs3;
if(vErrors !== null){
if(_errs3){
vErrors.length = _errs3;
}
else {
vErrors = null;
}
}
if(!_valid0){
const _errs5 = errors;
if(!(validate344(data, instancePath))){
vErrors = joined(vErrors, validate344.errors);
errors = vErrors.length;
}
var _valid0 = _errs5 === errors;
valid2 = _valid0;
}
if(!valid2){
vErrors = add(vErrors, instancePath, "if");
errors++;
}
validate23.errors = vErrors;
return errors === 0;
}


function validate21(data, instancePath = ""){
/*# sourceURL="plan" */;
let vErrors = null;
let errors = 0;
if(!(validate23(data, instancePath))){
vErrors = joined(vErrors, validate23.errors);
errors = vErrors.length;
}
validate21.errors = vErrors;
return errors === 0;
}

export const base = validate347;

function validate348(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
for(const key0 of Object.keys(data)){
if(!(keys12.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "plan")){
if(1 !== data.plan){
vErrors = add(vErrors, instancePath+"/plan", "const");
errors++;
}
}
if(has(data, "title")){
let data1 = data.title;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/title", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/title", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/title", "type");
errors++;
}
}
if(has(data, "notes")){
let data2 = data.notes;
if(typeof data2 === "string"){
if(data2.length > 4000){
vErrors = add(vErrors, instancePath+"/notes", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/notes", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/notes", "type");
errors++;
}
}
if(has(data, "base")){
if(!(validate25(data.base, instancePath+"/base"))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
}
if(has(data, "kit")){
if(!(validate27(data.kit, instancePath+"/kit"))){
vErrors = joined(vErrors, validate27.errors);
errors = vErrors.length;
}
}
if(has(data, "room")){
let data5 = data.room;
if((!(isMap(data5))) && (typeof data5 !== "string")){
vErrors = add(vErrors, instancePath+"/room", "type");
errors++;
}
const _errs12 = errors;
let valid2 = true;
const _errs13 = errors;
if(!(isMap(data5))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs13 === errors;
errors = _errs12;
if(vErrors !== null){
if(_errs12){
vErrors.length = _errs12;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs15 = errors;
if(!(validate148(data5, instancePath+"/room"))){
vErrors = joined(vErrors, validate148.errors);
errors = vErrors.length;
}
var _valid0 = _errs15 === errors;
valid2 = _valid0;
ifClause0 = "then";
}
else {
const _errs16 = errors;
if(!(validate25(data5, instancePath+"/room"))){
vErrors = joined(vErrors, validate25.errors);
errors = vErrors.length;
}
var _valid0 = _errs16 === errors;
valid2 = _valid0;
ifClause0 = "else";
}
if(!valid2){
vErrors = add(vErrors, instancePath+"/room", "if");
errors++;
}
}
if(has(data, "ambient")){
if(!(validate172(data.ambient, instancePath+"/ambient"))){
vErrors = joined(vErrors, validate172.errors);
errors = vErrors.length;
}
}
if(has(data, "camera")){
if(!(validate178(data.camera, instancePath+"/camera"))){
vErrors = joined(vErrors, validate178.errors);
errors = vErrors.length;
}
}
if(has(data, "subject")){
if(!(validate204(data.subject, instancePath+"/subject"))){
vErrors = joined(vErrors, validate204.errors);
errors = vErrors.length;
}
}
if(has(data, "backdrop")){
if(!(validate225(data.backdrop, instancePath+"/backdrop"))){
vErrors = joined(vErrors, validate225.errors);
errors = vErrors.length;
}
}
if(has(data, "lights")){
let data10 = data.lights;
if(isMap(data10)){
if(Object.keys(data10).length > 64){
vErrors = add(vErrors, instancePath+"/lights", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data10)){
const _errs24 = errors;
if(!(validate239(key1, instancePath+"/lights"))){
vErrors = joined(vErrors, validate239.errors);
errors = vErrors.length;
}
var valid4 = _errs24 === errors;
if(!valid4){
vErrors = add(vErrors, instancePath+"/lights", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data10)){
let data11 = data10[key2];
const _errs27 = errors;
let valid6 = true;
const _errs28 = errors;
if(data11 !== null){
vErrors = add(vErrors);
errors++;
}
var _valid1 = _errs28 === errors;
errors = _errs27;
if(vErrors !== null){
if(_errs27){
vErrors.length = _errs27;
}
else {
vErrors = null;
}
}
if(!_valid1){
const _errs30 = errors;
if(!(validate241(data11, instancePath+"/lights/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate241.errors);
errors = vErrors.length;
}
var _valid1 = _errs30 === errors;
valid6 = _valid1;
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/lights/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/lights", "type");
errors++;
}
}
if(has(data, "panels")){
let data12 = data.panels;
if(isMap(data12)){
if(Object.keys(data12).length > 64){
vErrors = add(vErrors, instancePath+"/panels", "maxProperties");
errors++;
}
for(const key3 of Object.keys(data12)){
const _errs33 = errors;
if(!(validate299(key3, instancePath+"/panels"))){
vErrors = joined(vErrors, validate299.errors);
errors = vErrors.length;
}
var valid7 = _errs33 === errors;
if(!valid7){
vErrors = add(vErrors, instancePath+"/panels", "propertyNames", key3);
errors++;
}
}
for(const key4 of Object.keys(data12)){
let data13 = data12[key4];
const _errs36 = errors;
let valid9 = true;
const _errs37 = errors;
if(data13 !== null){
vErrors = add(vErrors);
errors++;
}
var _valid2 = _errs37 === errors;
errors = _errs36;
if(vErrors !== null){
if(_errs36){
vErrors.length = _errs36;
}
else {
vErrors = null;
}
}
if(!_valid2){
const _errs39 = errors;
if(!(validate301(data13, instancePath+"/panels/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate301.errors);
errors = vErrors.length;
}
var _valid2 = _errs39 === errors;
valid9 = _valid2;
}
if(!valid9){
vErrors = add(vErrors, instancePath+"/panels/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/panels", "type");
errors++;
}
}
if(has(data, "points")){
let data14 = data.points;
if(isMap(data14)){
if(Object.keys(data14).length > 200){
vErrors = add(vErrors, instancePath+"/points", "maxProperties");
errors++;
}
for(const key5 of Object.keys(data14)){
const _errs42 = errors;
if(!(validate311(key5, instancePath+"/points"))){
vErrors = joined(vErrors, validate311.errors);
errors = vErrors.length;
}
var valid10 = _errs42 === errors;
if(!valid10){
vErrors = add(vErrors, instancePath+"/points", "propertyNames", key5);
errors++;
}
}
for(const key6 of Object.keys(data14)){
if(!(validate261(data14[key6], instancePath+"/points/" + key6.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate261.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/points", "type");
errors++;
}
}
if(has(data, "wanted")){
if(!(validate314(data.wanted, instancePath+"/wanted"))){
vErrors = joined(vErrors, validate314.errors);
errors = vErrors.length;
}
}
if(has(data, "readings")){
if(!(validate327(data.readings, instancePath+"/readings"))){
vErrors = joined(vErrors, validate327.errors);
errors = vErrors.length;
}
}
if(has(data, "accept")){
if(!(validate339(data.accept, instancePath+"/accept"))){
vErrors = joined(vErrors, validate339.errors);
errors = vErrors.length;
}
}
if(has(data, "tags")){
let data19 = data.tags;
if(Array.isArray(data19)){
if(data19.length > 100){
vErrors = add(vErrors, instancePath+"/tags", "maxItems");
errors++;
}
const len0 = data19.length;
for(let i0=0; i0<len0; i0++){
let data20 = data19[i0];
if(typeof data20 === "string"){
if(data20.length > 60){
vErrors = add(vErrors, instancePath+"/tags/" + i0, "maxLength");
errors++;
}
if(data20.length < 1){
vErrors = add(vErrors, instancePath+"/tags/" + i0, "minLength");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/tags/" + i0, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/tags", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate348.errors = vErrors;
return errors === 0;
}


function validate347(data, instancePath = ""){
/*# sourceURL="base" */;
let vErrors = null;
let errors = 0;
if(!(validate348(data, instancePath))){
vErrors = joined(vErrors, validate348.errors);
errors = vErrors.length;
}
validate347.errors = vErrors;
return errors === 0;
}

export const kit = validate367;

function validate368(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "kit")){
vErrors = add(vErrors, instancePath, "required", "kit");
errors++;
}
if(!has(data, "title")){
vErrors = add(vErrors, instancePath, "required", "title");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(keys3.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "kit")){
if(1 !== data.kit){
vErrors = add(vErrors, instancePath+"/kit", "const");
errors++;
}
}
if(has(data, "title")){
let data1 = data.title;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/title", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/title", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/title", "type");
errors++;
}
}
if(has(data, "notes")){
let data2 = data.notes;
if(typeof data2 === "string"){
if(data2.length > 4000){
vErrors = add(vErrors, instancePath+"/notes", "maxLength");
errors++;
}
if(!pattern0.test(data2)){
vErrors = add(vErrors, instancePath+"/notes", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/notes", "type");
errors++;
}
}
if(has(data, "units")){
let data3 = data.units;
if(isMap(data3)){
if(Object.keys(data3).length > 500){
vErrors = add(vErrors, instancePath+"/units", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data3)){
const _errs9 = errors;
if(!(validate29(key1, instancePath+"/units"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid1 = _errs9 === errors;
if(!valid1){
vErrors = add(vErrors, instancePath+"/units", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data3)){
if(!(validate31(data3[key2], instancePath+"/units/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate31.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/units", "type");
errors++;
}
}
if(has(data, "modifiers")){
let data5 = data.modifiers;
if(isMap(data5)){
if(Object.keys(data5).length > 500){
vErrors = add(vErrors, instancePath+"/modifiers", "maxProperties");
errors++;
}
for(const key3 of Object.keys(data5)){
const _errs14 = errors;
if(!(validate29(key3, instancePath+"/modifiers"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid3 = _errs14 === errors;
if(!valid3){
vErrors = add(vErrors, instancePath+"/modifiers", "propertyNames", key3);
errors++;
}
}
for(const key4 of Object.keys(data5)){
if(!(validate89(data5[key4], instancePath+"/modifiers/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate89.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/modifiers", "type");
errors++;
}
}
if(has(data, "stands")){
let data7 = data.stands;
if(isMap(data7)){
if(Object.keys(data7).length > 500){
vErrors = add(vErrors, instancePath+"/stands", "maxProperties");
errors++;
}
for(const key5 of Object.keys(data7)){
const _errs19 = errors;
if(!(validate29(key5, instancePath+"/stands"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid5 = _errs19 === errors;
if(!valid5){
vErrors = add(vErrors, instancePath+"/stands", "propertyNames", key5);
errors++;
}
}
for(const key6 of Object.keys(data7)){
if(!(validate106(data7[key6], instancePath+"/stands/" + key6.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate106.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/stands", "type");
errors++;
}
}
if(has(data, "cameras")){
let data9 = data.cameras;
if(isMap(data9)){
if(Object.keys(data9).length > 100){
vErrors = add(vErrors, instancePath+"/cameras", "maxProperties");
errors++;
}
for(const key7 of Object.keys(data9)){
const _errs24 = errors;
if(!(validate29(key7, instancePath+"/cameras"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid7 = _errs24 === errors;
if(!valid7){
vErrors = add(vErrors, instancePath+"/cameras", "propertyNames", key7);
errors++;
}
}
for(const key8 of Object.keys(data9)){
let data10 = data9[key8];
if(isMap(data10)){
for(const key9 of Object.keys(data10)){
if(!((((((key9 === "sensor") || (key9 === "sync")) || (key9 === "curtain")) || (key9 === "shutter-kind")) || (key9 === "readout")) || (key9 === "headroom"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), "additionalProperties", key9);
errors++;
}
}
if(has(data10, "sensor")){
let data11 = data10.sensor;
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "type");
errors++;
}
const _errs31 = errors;
let valid10 = true;
const _errs32 = errors;
if(typeof data11 === "string"){
if(!pattern13.test(data11)){
vErrors = add(vErrors);
errors++;
}
}
var _valid0 = _errs32 === errors;
errors = _errs31;
if(vErrors !== null){
if(_errs31){
vErrors.length = _errs31;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs33 = errors;
if(!(((data11 === "full frame") || (data11 === "aps-c")) || (data11 === "four thirds"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "enum");
errors++;
}
var _valid0 = _errs33 === errors;
valid10 = _valid0;
ifClause0 = "then";
}
else {
const _errs34 = errors;
if(!(validate82(data11, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor"))){
vErrors = joined(vErrors, validate82.errors);
errors = vErrors.length;
}
var _valid0 = _errs34 === errors;
valid10 = _valid0;
ifClause0 = "else";
}
if(!valid10){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sensor", "if");
errors++;
}
}
if(has(data10, "sync")){
if(!(validate114(data10.sync, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/sync"))){
vErrors = joined(vErrors, validate114.errors);
errors = vErrors.length;
}
}
if(has(data10, "curtain")){
if(!(validate62(data10.curtain, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/curtain"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data10, "shutter-kind")){
let data14 = data10["shutter-kind"];
if(typeof data14 !== "string"){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/shutter-kind", "type");
errors++;
}
if(!(((data14 === "focal-plane") || (data14 === "leaf")) || (data14 === "electronic"))){
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/shutter-kind", "enum");
errors++;
}
}
if(has(data10, "readout")){
if(!(validate62(data10.readout, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/readout"))){
vErrors = joined(vErrors, validate62.errors);
errors = vErrors.length;
}
}
if(has(data10, "headroom")){
if(!(validate56(data10.headroom, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1")+"/headroom"))){
vErrors = joined(vErrors, validate56.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/cameras/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/cameras", "type");
errors++;
}
}
if(has(data, "backdrops")){
let data17 = data.backdrops;
if(isMap(data17)){
if(Object.keys(data17).length > 500){
vErrors = add(vErrors, instancePath+"/backdrops", "maxProperties");
errors++;
}
for(const key10 of Object.keys(data17)){
const _errs47 = errors;
if(!(validate29(key10, instancePath+"/backdrops"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid15 = _errs47 === errors;
if(!valid15){
vErrors = add(vErrors, instancePath+"/backdrops", "propertyNames", key10);
errors++;
}
}
for(const key11 of Object.keys(data17)){
if(!(validate120(data17[key11], instancePath+"/backdrops/" + key11.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate120.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/backdrops", "type");
errors++;
}
}
if(has(data, "meters")){
let data19 = data.meters;
if(isMap(data19)){
if(Object.keys(data19).length > 40){
vErrors = add(vErrors, instancePath+"/meters", "maxProperties");
errors++;
}
for(const key12 of Object.keys(data19)){
const _errs52 = errors;
if(!(validate29(key12, instancePath+"/meters"))){
vErrors = joined(vErrors, validate29.errors);
errors = vErrors.length;
}
var valid17 = _errs52 === errors;
if(!valid17){
vErrors = add(vErrors, instancePath+"/meters", "propertyNames", key12);
errors++;
}
}
for(const key13 of Object.keys(data19)){
if(!(validate129(data19[key13], instancePath+"/meters/" + key13.replace(/~/g, "~0").replace(/\//g, "~1")))){
vErrors = joined(vErrors, validate129.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/meters", "type");
errors++;
}
}
if(has(data, "measured")){
let data21 = data.measured;
if(Array.isArray(data21)){
if(data21.length > 1000){
vErrors = add(vErrors, instancePath+"/measured", "maxItems");
errors++;
}
const len0 = data21.length;
for(let i0=0; i0<len0; i0++){
if(!(validate133(data21[i0], instancePath+"/measured/" + i0))){
vErrors = joined(vErrors, validate133.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/measured", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate368.errors = vErrors;
return errors === 0;
}


function validate367(data, instancePath = ""){
/*# sourceURL="kit" */;
let vErrors = null;
let errors = 0;
if(!(validate368(data, instancePath))){
vErrors = joined(vErrors, validate368.errors);
errors = vErrors.length;
}
validate367.errors = vErrors;
return errors === 0;
}

export const room = validate387;

function validate388(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "room")){
vErrors = add(vErrors, instancePath, "required", "room");
errors++;
}
if(!has(data, "width")){
vErrors = add(vErrors, instancePath, "required", "width");
errors++;
}
if(!has(data, "length")){
vErrors = add(vErrors, instancePath, "required", "length");
errors++;
}
if(!has(data, "height")){
vErrors = add(vErrors, instancePath, "required", "height");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(keys13.has(key0))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "room")){
if(1 !== data.room){
vErrors = add(vErrors, instancePath+"/room", "const");
errors++;
}
}
if(has(data, "title")){
let data1 = data.title;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/title", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/title", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/title", "type");
errors++;
}
}
if(has(data, "width")){
if(!(validate41(data.width, instancePath+"/width"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "length")){
if(!(validate41(data.length, instancePath+"/length"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "height")){
if(!(validate41(data.height, instancePath+"/height"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "left-wall")){
if(!(validate41(data["left-wall"], instancePath+"/left-wall"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "behind-backdrop")){
if(!(validate41(data["behind-backdrop"], instancePath+"/behind-backdrop"))){
vErrors = joined(vErrors, validate41.errors);
errors = vErrors.length;
}
}
if(has(data, "walls")){
let data7 = data.walls;
if(((!(isMap(data7))) && (!((typeof data7 == "number") && (isFinite(data7))))) && (typeof data7 !== "string")){
vErrors = add(vErrors, instancePath+"/walls", "type");
errors++;
}
const _errs17 = errors;
let valid6 = true;
const _errs18 = errors;
if(!(isMap(data7))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs18 === errors;
errors = _errs17;
if(vErrors !== null){
if(_errs17){
vErrors.length = _errs17;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs20 = errors;
const _errs21 = errors;
let valid7 = true;
const _errs22 = errors;
const _errs23 = errors;
let valid8 = false;
const _errs24 = errors;
if(isMap(data7)){
let missing0;
if((!has(data7, "reflectance")) && (missing0 = "reflectance")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs24 === errors;
valid8 = valid8 || _valid2;
if(!valid8){
const _errs25 = errors;
if(isMap(data7)){
let missing1;
if((!has(data7, "colour")) && (missing1 = "colour")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs25 === errors;
valid8 = valid8 || _valid2;
if(!valid8){
const _errs26 = errors;
if(isMap(data7)){
let missing2;
if((!has(data7, "name")) && (missing2 = "name")){
vErrors = add(vErrors);
errors++;
}
}
var _valid2 = _errs26 === errors;
valid8 = valid8 || _valid2;
}
}
if(!valid8){
vErrors = add(vErrors);
errors++;
}
else {
errors = _errs23;
if(vErrors !== null){
if(_errs23){
vErrors.length = _errs23;
}
else {
vErrors = null;
}
}
}
var _valid1 = _errs22 === errors;
errors = _errs21;
if(vErrors !== null){
if(_errs21){
vErrors.length = _errs21;
}
else {
vErrors = null;
}
}
let ifClause1;
if(_valid1){
const _errs27 = errors;
if(!(validate121(data7, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid1 = _errs27 === errors;
valid7 = _valid1;
ifClause1 = "then";
}
else {
const _errs28 = errors;
if(isMap(data7)){
for(const key1 of Object.keys(data7)){
if(!((((key1 === "left") || (key1 === "right")) || (key1 === "front")) || (key1 === "back"))){
vErrors = add(vErrors, instancePath+"/walls", "additionalProperties", key1);
errors++;
}
}
if(has(data7, "left")){
if(!(validate121(data7.left, instancePath+"/walls/left"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data7, "right")){
if(!(validate121(data7.right, instancePath+"/walls/right"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data7, "front")){
if(!(validate121(data7.front, instancePath+"/walls/front"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data7, "back")){
if(!(validate121(data7.back, instancePath+"/walls/back"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/walls", "type");
errors++;
}
var _valid1 = _errs28 === errors;
valid7 = _valid1;
ifClause1 = "else";
}
if(!valid7){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
var _valid0 = _errs20 === errors;
valid6 = _valid0;
ifClause0 = "then";
}
else {
const _errs39 = errors;
const _errs40 = errors;
let valid14 = true;
const _errs41 = errors;
if(!((typeof data7 == "number") && (isFinite(data7)))){
vErrors = add(vErrors);
errors++;
}
var _valid3 = _errs41 === errors;
errors = _errs40;
if(vErrors !== null){
if(_errs40){
vErrors.length = _errs40;
}
else {
vErrors = null;
}
}
let ifClause2;
if(_valid3){
const _errs43 = errors;
if(!(validate121(data7, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid3 = _errs43 === errors;
valid14 = _valid3;
ifClause2 = "then";
}
else {
const _errs44 = errors;
if(!(validate121(data7, instancePath+"/walls"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
var _valid3 = _errs44 === errors;
valid14 = _valid3;
ifClause2 = "else";
}
if(!valid14){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
var _valid0 = _errs39 === errors;
valid6 = _valid0;
ifClause0 = "else";
}
if(!valid6){
vErrors = add(vErrors, instancePath+"/walls", "if");
errors++;
}
}
if(has(data, "ceiling")){
if(!(validate121(data.ceiling, instancePath+"/ceiling"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "floor")){
if(!(validate121(data.floor, instancePath+"/floor"))){
vErrors = joined(vErrors, validate121.errors);
errors = vErrors.length;
}
}
if(has(data, "mains")){
if(!(validate163(data.mains, instancePath+"/mains"))){
vErrors = joined(vErrors, validate163.errors);
errors = vErrors.length;
}
}
if(has(data, "circuits")){
let data15 = data.circuits;
if(isMap(data15)){
if(Object.keys(data15).length > 40){
vErrors = add(vErrors, instancePath+"/circuits", "maxProperties");
errors++;
}
for(const key2 of Object.keys(data15)){
const _errs53 = errors;
if(!(validate165(key2, instancePath+"/circuits"))){
vErrors = joined(vErrors, validate165.errors);
errors = vErrors.length;
}
var valid18 = _errs53 === errors;
if(!valid18){
vErrors = add(vErrors, instancePath+"/circuits", "propertyNames", key2);
errors++;
}
}
for(const key3 of Object.keys(data15)){
let data16 = data15[key3];
if(isMap(data16)){
if(!has(data16, "voltage")){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "voltage");
errors++;
}
if(!has(data16, "breaker")){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "required", "breaker");
errors++;
}
for(const key4 of Object.keys(data16)){
if(!((key4 === "voltage") || (key4 === "breaker"))){
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "additionalProperties", key4);
errors++;
}
}
if(has(data16, "voltage")){
if(!(validate70(data16.voltage, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/voltage"))){
vErrors = joined(vErrors, validate70.errors);
errors = vErrors.length;
}
}
if(has(data16, "breaker")){
if(!(validate168(data16.breaker, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/breaker"))){
vErrors = joined(vErrors, validate168.errors);
errors = vErrors.length;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/circuits/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/circuits", "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate388.errors = vErrors;
return errors === 0;
}


function validate387(data, instancePath = ""){
/*# sourceURL="room" */;
let vErrors = null;
let errors = 0;
if(!(validate388(data, instancePath))){
vErrors = joined(vErrors, validate388.errors);
errors = vErrors.length;
}
validate387.errors = vErrors;
return errors === 0;
}

export const settings = validate408;
const pattern73 = new RegExp("^[a-z]+(?:-[a-z]+){0,8}$", "u");
const pattern75 = new RegExp("^[a-z0-9]+(?:-[a-z0-9]+){0,8}$", "u");

function validate409(data, instancePath = ""){
let vErrors = null;
let errors = 0;
if(isMap(data)){
if(!has(data, "thirdstop")){
vErrors = add(vErrors, instancePath, "required", "thirdstop");
errors++;
}
for(const key0 of Object.keys(data)){
if(!(((((((key0 === "thirdstop") || (key0 === "notes")) || (key0 === "plans")) || (key0 === "ignore")) || (key0 === "levels")) || (key0 === "limits")) || (key0 === "fail-on"))){
vErrors = add(vErrors, instancePath, "additionalProperties", key0);
errors++;
}
}
if(has(data, "thirdstop")){
if(1 !== data.thirdstop){
vErrors = add(vErrors, instancePath+"/thirdstop", "const");
errors++;
}
}
if(has(data, "notes")){
let data1 = data.notes;
if(typeof data1 === "string"){
if(data1.length > 4000){
vErrors = add(vErrors, instancePath+"/notes", "maxLength");
errors++;
}
if(!pattern0.test(data1)){
vErrors = add(vErrors, instancePath+"/notes", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/notes", "type");
errors++;
}
}
if(has(data, "plans")){
let data2 = data.plans;
if(Array.isArray(data2)){
if(data2.length > 100){
vErrors = add(vErrors, instancePath+"/plans", "maxItems");
errors++;
}
const len0 = data2.length;
for(let i0=0; i0<len0; i0++){
let data3 = data2[i0];
if(typeof data3 === "string"){
if(data3.length > 300){
vErrors = add(vErrors, instancePath+"/plans/" + i0, "maxLength");
errors++;
}
if(data3.length < 1){
vErrors = add(vErrors, instancePath+"/plans/" + i0, "minLength");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/plans/" + i0, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/plans", "type");
errors++;
}
}
if(has(data, "ignore")){
let data4 = data.ignore;
if(Array.isArray(data4)){
if(data4.length > 100){
vErrors = add(vErrors, instancePath+"/ignore", "maxItems");
errors++;
}
const len1 = data4.length;
for(let i1=0; i1<len1; i1++){
let data5 = data4[i1];
if(typeof data5 === "string"){
if(data5.length > 300){
vErrors = add(vErrors, instancePath+"/ignore/" + i1, "maxLength");
errors++;
}
if(data5.length < 1){
vErrors = add(vErrors, instancePath+"/ignore/" + i1, "minLength");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/ignore/" + i1, "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/ignore", "type");
errors++;
}
}
if(has(data, "levels")){
let data6 = data.levels;
if(isMap(data6)){
if(Object.keys(data6).length > 200){
vErrors = add(vErrors, instancePath+"/levels", "maxProperties");
errors++;
}
for(const key1 of Object.keys(data6)){
const _errs15 = errors;
if(typeof key1 === "string"){
if(!pattern73.test(key1)){
vErrors = add(vErrors, instancePath+"/levels", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/levels", "type");
errors++;
}
var valid5 = _errs15 === errors;
if(!valid5){
vErrors = add(vErrors, instancePath+"/levels", "propertyNames", key1);
errors++;
}
}
for(const key2 of Object.keys(data6)){
let data7 = data6[key2];
if(typeof data7 !== "string"){
vErrors = add(vErrors, instancePath+"/levels/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
if(!((((data7 === "error") || (data7 === "warning")) || (data7 === "note")) || (data7 === "off"))){
vErrors = add(vErrors, instancePath+"/levels/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/levels", "type");
errors++;
}
}
if(has(data, "limits")){
let data8 = data.limits;
if(isMap(data8)){
if(Object.keys(data8).length > 200){
vErrors = add(vErrors, instancePath+"/limits", "maxProperties");
errors++;
}
for(const key3 of Object.keys(data8)){
const _errs22 = errors;
if(typeof key3 === "string"){
if(!pattern73.test(key3)){
vErrors = add(vErrors, instancePath+"/limits", "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/limits", "type");
errors++;
}
var valid7 = _errs22 === errors;
if(!valid7){
vErrors = add(vErrors, instancePath+"/limits", "propertyNames", key3);
errors++;
}
}
for(const key4 of Object.keys(data8)){
let data9 = data8[key4];
if(isMap(data9)){
if(Object.keys(data9).length > 40){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "maxProperties");
errors++;
}
for(const key5 of Object.keys(data9)){
const _errs27 = errors;
if(typeof key5 === "string"){
if(!pattern75.test(key5)){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
var valid9 = _errs27 === errors;
if(!valid9){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "propertyNames", key5);
errors++;
}
}
for(const key6 of Object.keys(data9)){
let data10 = data9[key6];
if((!((typeof data10 == "number") && (isFinite(data10)))) && (typeof data10 !== "string")){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
const _errs32 = errors;
let valid11 = true;
const _errs33 = errors;
if(!((typeof data10 == "number") && (isFinite(data10)))){
vErrors = add(vErrors);
errors++;
}
var _valid0 = _errs33 === errors;
errors = _errs32;
if(vErrors !== null){
if(_errs32){
vErrors.length = _errs32;
}
else {
vErrors = null;
}
}
let ifClause0;
if(_valid0){
const _errs35 = errors;
if((typeof data10 == "number") && (isFinite(data10))){
if(data10 > 100000 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "maximum");
errors++;
}
if(data10 < -100000 || isNaN(data10)){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "minimum");
errors++;
}
}
var _valid0 = _errs35 === errors;
valid11 = _valid0;
ifClause0 = "then";
}
else {
const _errs36 = errors;
if(typeof data10 === "string"){
if(data10.length > 4000){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "maxLength");
errors++;
}
if(!pattern0.test(data10)){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "pattern");
errors++;
}
}
else {
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
var _valid0 = _errs36 === errors;
valid11 = _valid0;
ifClause0 = "else";
}
if(!valid11){
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), "if");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/limits/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), "type");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath+"/limits", "type");
errors++;
}
}
if(has(data, "fail-on")){
let data11 = data["fail-on"];
if(typeof data11 !== "string"){
vErrors = add(vErrors, instancePath+"/fail-on", "type");
errors++;
}
if(!(((data11 === "error") || (data11 === "warning")) || (data11 === "note"))){
vErrors = add(vErrors, instancePath+"/fail-on", "enum");
errors++;
}
}
}
else {
vErrors = add(vErrors, instancePath, "type");
errors++;
}
validate409.errors = vErrors;
return errors === 0;
}


function validate408(data, instancePath = ""){
/*# sourceURL="settings" */;
let vErrors = null;
let errors = 0;
if(!(validate409(data, instancePath))){
vErrors = joined(vErrors, validate409.errors);
errors = vErrors.length;
}
validate408.errors = vErrors;
return errors === 0;
}
